package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.Forwarder;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.upkeep.Crew;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Several daemons at one real Mosquitto, which writes down what is subscribed to. */
@Timeout(60)
final class SharedBrokersIT {
    private static final int SOON_A_FLOOD = 1500;

    @TempDir
    private static Path folder;

    private static Mosquitto mosquitto;

    private final Crew crew = new Crew();
    private final SharedBrokers brokers = new SharedBrokers(Patience.USUAL, crew, () -> new Flood(SOON_A_FLOOD));
    private final List<Rig> rigs = new ArrayList<>();

    /** One of them, and what it has heard of its printers. */
    private final class Rig {
        private final String name;
        private final List<HeardMessage> messages = new CopyOnWriteArrayList<>();
        private final Connection connection;

        Rig(URI url, String name, List<String> filters, Consumer<HeardMessage> reader) {
            this.name = name;
            connection = brokers.to(
                    Alder.at(url),
                    new Brokers.Wanted(List.of(topic("ask/#"), status()), filters, message -> {
                        if (!message.topic().equals(status())) {
                            messages.add(message);
                            reader.accept(message);
                        }
                    }),
                    Optional.of(new Will(status(), "lost", "off")));
            rigs.add(this);
            connection.publish(status(), "well".getBytes(StandardCharsets.UTF_8), true);
            connection.start();
        }

        private String topic(String end) {
            return "lampwright/" + name + "/" + end;
        }

        String status() {
            return topic("status");
        }

        Rig connected() {
            Await.until(name, () -> connection.state().phase() == BrokerState.Phase.CONNECTED);
            return this;
        }

        /** What it has heard on a topic, those that were kept with a star. */
        List<String> heard(String topic) {
            return messages.stream()
                    .filter(message -> message.topic().equals(topic))
                    .map(message ->
                            new String(message.payload(), StandardCharsets.UTF_8) + (message.isRetained() ? "*" : ""))
                    .toList();
        }

        void awaitHeard(String topic, String... payloads) {
            Await.until(name + " hears " + topic, () -> heard(topic).size() >= payloads.length);
            assertEquals(List.of(payloads), heard(topic), name);
        }
    }

    @BeforeAll
    static void start() {
        mosquitto = Mosquitto.startWith(List.of(
                "log_dest file " + folder.resolve("log"),
                "log_type subscribe",
                "log_type unsubscribe",
                "log_type notice"));
    }

    @AfterAll
    static void end() {
        mosquitto.close();
    }

    @AfterEach
    void endRigs() {
        rigs.parallelStream().forEach(rig -> rig.connection.close());
        crew.close();
    }

    private Rig rig(String name, String... filters) {
        return new Rig(mosquitto.url(), name, List.of(filters), message -> {});
    }

    private static long logged(String what) {
        try {
            return Files.readAllLines(folder.resolve("log")).stream()
                    .filter(line -> line.contains(what))
                    .count();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void eachHearsWhatItWantsOnceOverOneConnection() {
        List<Rig> all = IntStream.range(0, 8)
                .mapToObj(i -> rig("one" + i, "one/p" + i + "/job", "one/+/heat", "one/p0/#"))
                .toList();
        all.forEach(Rig::connected);
        mosquitto.publish("one/p3/job", "RUN", false);
        mosquitto.publish("one/p0/heat", "60", false);
        mosquitto.publish("one/end/heat", "0", false);
        for (Rig rig : all) {
            rig.awaitHeard("one/end/heat", "0");
            rig.awaitHeard("one/p0/heat", "60");
            rig.awaitHeard("one/p3/job", rig == all.get(3) ? new String[] {"RUN"} : new String[0]);
        }
        long clients = IntStream.range(0, 8)
                .mapToObj(i -> clientsSubscribedTo("one/p" + i + "/job"))
                .flatMap(List::stream)
                .distinct()
                .count();
        assertEquals(1, clients, "connections that hear printers");
        HeardMessage first = all.get(0).messages.get(0);
        HeardMessage same = all.get(1).messages.stream()
                .filter(message -> message.topic().equals(first.topic()))
                .findFirst()
                .orElseThrow();
        assertSame(first.opened(String::new), same.opened(String::new), "read once for all");
    }

    private static List<String> clientsSubscribedTo(String filter) {
        try {
            return Files.readAllLines(folder.resolve("log")).stream()
                    .filter(line -> line.endsWith(" 1 " + filter))
                    .map(line -> line.split(" ", -1)[1])
                    .distinct()
                    .toList();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** The broker sends what it has kept to the shared connection again, and those who were there before must not take it for news. */
    @Test
    void whatIsKeptReachesANewcomerAndNobodyElse() {
        mosquitto.publish("kept/alder/job", "IDLE", true);
        Rig alder = rig("alder", "kept/+/job").connected();
        alder.awaitHeard("kept/alder/job", "IDLE*");
        mosquitto.publish("kept/alder/job", "RUN", false);
        mosquitto.publish("kept/oak/job", "RUN", true);
        alder.awaitHeard("kept/alder/job", "IDLE*", "RUN");
        alder.awaitHeard("kept/oak/job", "RUN");
        Rig birch = rig("birch", "kept/+/job").connected();
        birch.awaitHeard("kept/alder/job", "IDLE*");
        birch.awaitHeard("kept/oak/job", "RUN*");
        Rig rowan = rig("rowan", "kept/alder/job").connected();
        rowan.awaitHeard("kept/alder/job", "IDLE*");
        mosquitto.publish("kept/alder/job", "DONE", false);
        alder.awaitHeard("kept/alder/job", "IDLE*", "RUN", "DONE");
        alder.awaitHeard("kept/oak/job", "RUN");
        birch.awaitHeard("kept/alder/job", "IDLE*", "DONE");
        rowan.awaitHeard("kept/alder/job", "IDLE*", "DONE");
    }

    @Test
    void whoComesAndGoesInterruptsNobody() {
        Rig stays = rig("stays", "going/+/job").connected();
        Rig goes = rig("goes", "going/alder/heat").connected();
        List<String> sent = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            mosquitto.publish("going/alder/job", "" + i, false);
            sent.add("" + i);
            if (i == 1) {
                goes.connection.close();
            } else {
                rig("comes" + i, "going/+/job", "going/other/" + i).connected();
            }
        }
        stays.awaitHeard("going/alder/job", sent.toArray(String[]::new));
        Await.until("nobody wants it any more", () -> logged(" going/alder/heat") >= 2);
        assertEquals("off", mosquitto.read(goes.status()));
        assertEquals(1, clientsSubscribedTo("going/+/job").size());
    }

    @Test
    void whoIsStuckOrFailsHoldsUpNobody() throws InterruptedException {
        CountDownLatch freed = new CountDownLatch(1);
        Rig stuck = new Rig(mosquitto.url(), "stuck", List.of("mix/#"), message -> await(freed));
        Rig fails = new Rig(mosquitto.url(), "fails", List.of("mix/#"), message -> {
            throw new IllegalStateException("as the test wants it");
        });
        Rig well = rig("well", "mix/end", "mix/oak");
        List.of(stuck, fails, well).forEach(Rig::connected);
        try (CapturedLog log = new CapturedLog("dev.lampwright.broker")) {
            mosquitto.publish("mix/oak", "first", false);
            mosquitto.publishAll("mix/alder", Collections.nCopies(3 * Inbox.MOST, "RUN"));
            mosquitto.publish("mix/end", "last", false);
            well.awaitHeard("mix/end", "last");
            well.awaitHeard("mix/oak", "first");
            fails.awaitHeard("mix/end", "last");
            assertEquals(1, stuck.messages.size());
            freed.countDown();
            stuck.awaitHeard("mix/end", "last");
            assertTrue(stuck.messages.size() <= Inbox.MOST + 1, "the rest was skipped");
            assertTrue(
                    log.lines().stream().anyMatch(line -> line.contains("some are skipped")), () -> "" + log.lines());
        }
    }

    /** A broker drops what it cannot hand over soon enough, by connection (Mosquitto: max_queued_messages, 1000 if nobody sets it). */
    @Test
    void aFloodGetsAConnectionOfItsOwn() {
        Rig flooded = rig("flooded", "flood/alder", "flood/end").connected();
        Rig well = rig("well", "flood/birch", "flood/end").connected();
        Await.until("it is moved", () -> {
            mosquitto.publishAll("flood/alder", Collections.nCopies(2 * SOON_A_FLOOD, "RUN"));
            return clientsSubscribedTo("flood/alder").size() == 2;
        });
        Await.until("it has left the others", () -> logged(" flood/alder") >= 3);
        mosquitto.publish("flood/birch", "RUN", false);
        mosquitto.publish("flood/end", "last", false);
        flooded.awaitHeard("flood/end", "last");
        well.awaitHeard("flood/end", "last");
        well.awaitHeard("flood/birch", "RUN");
        assertEquals(
                BrokerState.Phase.CONNECTED,
                flooded.connected().connection.state().phase());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void theLossOfEachIsReportedOnItsOwnTopicAndAllComeBack() throws IOException {
        try (Forwarder forwarder = Forwarder.to(mosquitto.port())) {
            URI url = URI.create("mqtt://127.0.0.1:" + forwarder.port());
            List<Rig> all = List.of(
                    new Rig(url, "cut1", List.of("cut/#"), message -> {}),
                    new Rig(url, "cut2", List.of("cut/#"), message -> {}),
                    new Rig(url, "cut3", List.of("cut/x"), message -> {}));
            all.forEach(Rig::connected);
            forwarder.cut();
            all.forEach(rig -> awaitStatus(rig, "lost"));
            all.forEach(rig ->
                    Await.until("it is noticed", () -> rig.connection.state().phase() != BrokerState.Phase.CONNECTED));
            mosquitto.publish("cut/x", "meanwhile", true);
            forwarder.restore();
            all.forEach(rig -> awaitStatus(rig, "well"));
            all.forEach(rig -> rig.awaitHeard("cut/x", "meanwhile*"));
        }
    }

    private static void awaitStatus(Rig rig, String payload) {
        Await.until(
                rig.name + " is " + payload, () -> mosquitto.read(rig.status()).equals(payload));
    }

    /** Others hear nothing of what a rig is asked, and it is asked once, even if the filter for a printer has room for it. */
    @Test
    void whatIsAskedComesOnce() {
        Rig all = rig("all", "lampwright/all/#", "lampwright/end").connected();
        Rig other = rig("other", "lampwright/+/ask/#", "lampwright/end").connected();
        mosquitto.publish("lampwright/all/ask/look", "done", false);
        mosquitto.publish("lampwright/end", "0", false);
        all.awaitHeard("lampwright/end", "0");
        other.awaitHeard("lampwright/end", "0");
        all.awaitHeard("lampwright/all/ask/look", "done");
        other.awaitHeard("lampwright/all/ask/look", "done");
    }

    /** As brokers with an access list for subscriptions answer: 0x80 for what is not allowed (MQTT 3.1.1, section 3.9.3). */
    @Test
    void whoIsRefusedEverythingSaysSoAndOthersAreWell() {
        int port = FreePort.find();
        try (FakeBroker broker = FakeBroker.on(port, SharedBrokersIT::refusing)) {
            URI url = Alder.url(port);
            Rig refused = new Rig(url, "refused", List.of("refused/job"), message -> {});
            Rig allowed = new Rig(url, "allowed", List.of("allowed/job"), message -> {}).connected();
            Await.until("it is refused", () -> refused.connection.state().phase() == BrokerState.Phase.LOST);
            assertEquals(
                    "the broker refuses the subscription to refused/job; check its access list",
                    refused.connection.state().reason());
            assertEquals(BrokerState.Phase.CONNECTED, allowed.connection.state().phase());
            assertTrue(broker.connections() >= 3);
            rigs.forEach(rig -> rig.connection.close());
        }
    }

    private static void refusing(FakeBroker.Peer peer) throws IOException {
        peer.connack(0);
        while (true) {
            byte[] packet = peer.packet();
            if (peer.type() == 8) {
                List<Integer> answer = new ArrayList<>(List.of(packet[0] & 0xFF, packet[1] & 0xFF));
                for (int at = 2; at < packet.length; at += 3 + FakeBroker.number(packet, at)) {
                    String filter = new String(packet, at + 2, FakeBroker.number(packet, at), StandardCharsets.UTF_8);
                    answer.add(filter.startsWith("refused") ? 0x80 : 1);
                }
                answer.add(0, answer.size());
                answer.add(0, 0x90);
                peer.send(answer.stream().mapToInt(Integer::intValue).toArray());
            }
        }
    }
}
