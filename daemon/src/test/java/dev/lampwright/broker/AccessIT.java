package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.Mosquitto.Account;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListSet;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttSecurityException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example of a broker's configuration and access list, with a real Mosquitto: everybody can do what they need, and nothing else. */
final class AccessIT {
    private static final Duration DEADLINE = Duration.ofSeconds(30);
    private static final Path SHIPPED = Path.of("..", "systemd", "mosquitto");
    private static final String PRINTER = "alder";
    private static final String DAEMON = "lampwright";
    private static final String PEOPLE = "people";
    private static final List<String> ALL = List.of(PRINTER, DAEMON, PEOPLE);

    /** Who may write and who may read, by topic. */
    private static final Map<String, Rights> RIGHTS = Map.of(
            "shop/alder/job", new Rights(Set.of(PRINTER), Set.of(DAEMON)),
            "shop/alder/heat/plate", new Rights(Set.of(PRINTER), Set.of(DAEMON)),
            "shop/birch/job", new Rights(Set.of(), Set.of()),
            "lampwright/alder/ask/brightness", new Rights(Set.of(PEOPLE), Set.of(DAEMON)),
            "lampwright/alder/answer", new Rights(Set.of(DAEMON), Set.of(PEOPLE)),
            "lampwright/alder/status", new Rights(Set.of(DAEMON), Set.of(PEOPLE, DAEMON)),
            "lampwright/birch/status", new Rights(Set.of(), Set.of()),
            "other", new Rights(Set.of(), Set.of()));

    @TempDir
    Path folder;

    private Mosquitto mosquitto;

    private record Rights(Set<String> write, Set<String> read) {}

    @BeforeEach
    void start() {
        mosquitto = Mosquitto.asShipped(SHIPPED, "lampwright.acl", accounts(ALL));
    }

    private static List<Account> accounts(List<String> names) {
        return names.stream().map(name -> new Account(name, name + "-sesame")).toList();
    }

    @AfterEach
    void stop() {
        mosquitto.close();
    }

    private MqttClient client(String name) throws MqttException {
        return new MqttClient("tcp://127.0.0.1:" + mosquitto.port(), name + "-test", new MemoryPersistence());
    }

    private static MqttConnectOptions login(String name, String password) {
        MqttConnectOptions options = new MqttConnectOptions();
        options.setUserName(name);
        options.setPassword(password.toCharArray());
        return options;
    }

    private MqttClient connected(String name) throws MqttException {
        MqttClient client = client(name);
        client.connect(login(name, name + "-sesame"));
        return client;
    }

    @Test
    void everybodyCanDoWhatTheyMustAndNothingElse() throws MqttException {
        requireRights(RIGHTS, ALL);
    }

    /** The access list for many printers: each printer has its own topics under its name, and the daemon has all prefixes. */
    @Test
    void soTheyCanWhereThereAreManyPrinters() throws MqttException {
        List<String> all = List.of(PRINTER, "birch", DAEMON, PEOPLE);
        mosquitto.close();
        mosquitto = Mosquitto.asShipped(SHIPPED, "farm.acl", accounts(all));
        requireRights(
                Map.of(
                        "shop/alder/job", new Rights(Set.of(PRINTER), Set.of(DAEMON)),
                        "shop/birch/heat/plate", new Rights(Set.of("birch"), Set.of(DAEMON)),
                        "lampwright/alder/ask/brightness", new Rights(Set.of(PEOPLE), Set.of(DAEMON)),
                        "lampwright/birch/answer", new Rights(Set.of(DAEMON), Set.of(PEOPLE)),
                        "lampwright/birch/status", new Rights(Set.of(DAEMON), Set.of(PEOPLE, DAEMON)),
                        "other", new Rights(Set.of(), Set.of())),
                all);
    }

    private void requireRights(Map<String, Rights> allowed, List<String> all) throws MqttException {
        Set<String> heard = new ConcurrentSkipListSet<>();
        List<MqttClient> readers = new ArrayList<>();
        for (String reader : all) {
            MqttClient client = connected(reader);
            client.subscribe("#", 1, (topic, message) -> heard.add(topic + " from " + message + " to " + reader));
            readers.add(client);
        }
        for (String writer : all) {
            MqttClient client = client(writer + "-writing");
            client.connect(login(writer, writer + "-sesame"));
            for (String topic : allowed.keySet()) {
                client.publish(topic, Alder.bytes(writer), 1, false);
            }
            client.disconnect();
        }
        Set<String> expected = new TreeSet<>();
        allowed.forEach((topic, rights) -> rights.write.forEach(
                writer -> rights.read.forEach(reader -> expected.add(topic + " from " + writer + " to " + reader))));
        Await.until("what is allowed", DEADLINE, () -> heard.containsAll(expected));
        for (MqttClient reader : readers) {
            reader.unsubscribe("#");
            reader.disconnect();
            reader.close();
        }
        assertEquals(expected, heard);
    }

    @Test
    void nobodyElseIsLetIn() throws MqttException {
        try (MqttClient stranger = client("stranger")) {
            assertThrows(MqttSecurityException.class, stranger::connect);
            assertThrows(MqttSecurityException.class, () -> stranger.connect(login(DAEMON, "wrong")));
        }
    }

    /** The daemon's own client hears the printer and those who ask, and people find its status and its last message. */
    @Test
    void theDaemonGetsAlong() throws MqttException, IOException {
        Set<String> heard = new ConcurrentSkipListSet<>();
        Set<String> told = new ConcurrentSkipListSet<>();
        try (MqttClient people = connected(PEOPLE);
                MqttClient printer = connected(PRINTER)) {
            people.subscribe("lampwright/alder/status", 1, (topic, message) -> told.add(message.toString()));
            try (BrokerClient daemon = daemon(heard)) {
                daemon.start();
                daemon.publish("lampwright/alder/status", Alder.bytes("printing"), true);
                Await.until("the daemon's status", DEADLINE, () -> told.contains("printing"));
                people.publish("lampwright/alder/ask/brightness", Alder.bytes("0.5"), 1, false);
                printer.publish("shop/alder/job", Alder.bytes("{}"), 1, false);
                Await.until("both", DEADLINE, () -> heard.size() == 2);
            }
            Await.until("the goodbye", DEADLINE, () -> told.contains("off"));
            people.disconnect();
            printer.disconnect();
        }
    }

    private BrokerClient daemon(Set<String> heard) throws IOException {
        Path password = Files.writeString(folder.resolve("password"), DAEMON + "-sesame\n");
        return new BrokerClient(
                new Broker(mosquitto.url(), Optional.empty(), Optional.of(DAEMON), Optional.of(password)),
                List.of("shop/alder/job", "lampwright/alder/ask/#"),
                (topic, payload, retained) -> heard.add(topic),
                Optional.of(new Will("lampwright/alder/status", "lost", "off")));
    }
}
