package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Forwarder;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What we publish, as a real Mosquitto and {@code mosquitto_sub} see it. */
final class PublishingIT {
    private static final Duration DEADLINE = Duration.ofSeconds(30);
    private static final String STATUS = "lampwright/alder/status";
    private static final String ANSWER = "lampwright/alder/answer";
    private static final Will WILL = new Will(STATUS, "lost", "off");

    private final List<String> heard = new CopyOnWriteArrayList<>();

    private BrokerClient start(URI url) {
        return started(new BrokerClient(Alder.at(url), List.of(ANSWER), this::hear, Optional.of(WILL)));
    }

    private static BrokerClient started(BrokerClient client) {
        client.start();
        return client;
    }

    private void hear(String topic, byte[] payload, boolean retained) {
        heard.add(new String(payload, StandardCharsets.UTF_8));
    }

    private static void publish(BrokerClient client, String topic, String payload, boolean retained) {
        client.publish(topic, payload.getBytes(StandardCharsets.UTF_8), retained);
    }

    private static void awaitStatus(Mosquitto mosquitto, String payload) {
        Await.until(
                "the status to be " + payload,
                DEADLINE,
                () -> mosquitto.read(STATUS).equals(payload));
    }

    @Test
    void whatIsRetainedIsThereForWhoComesLaterAndAllElseComesOnceInOrder() {
        try (Mosquitto mosquitto = Mosquitto.start();
                BrokerClient client = start(mosquitto.url())) {
            publish(client, STATUS, "printing", true);
            List<String> answers =
                    IntStream.range(0, 20).mapToObj(i -> "done " + i).toList();
            answers.forEach(answer -> publish(client, ANSWER, answer, false));
            assertEquals("printing", mosquitto.read(STATUS));
            Await.until("the answers", DEADLINE, () -> heard.size() >= answers.size());
            assertEquals(answers, heard);
        }
    }

    @Test
    void theBrokerTellsWhenItLosesUsAndTheStatusIsThereAgainAsSoonAsWeAre() {
        try (Mosquitto mosquitto = Mosquitto.start();
                Forwarder forwarder = Forwarder.to(mosquitto.port());
                BrokerClient client = start(URI.create("mqtt://127.0.0.1:" + forwarder.port()))) {
            publish(client, STATUS, "printing", true);
            awaitStatus(mosquitto, "printing");
            forwarder.cut();
            awaitStatus(mosquitto, "lost");
            forwarder.restore();
            awaitStatus(mosquitto, "printing");
        }
    }

    @Test
    void saysGoodbyeLast() {
        try (Mosquitto mosquitto = Mosquitto.start()) {
            BrokerClient client = start(mosquitto.url());
            publish(client, STATUS, "printing", true);
            awaitStatus(mosquitto, "printing");
            publish(client, STATUS, "idle", true);
            client.close();
            publish(client, STATUS, "too late", true);
            assertEquals("off", mosquitto.read(STATUS));
        }
    }

    @Test
    void whatWasPublishedWithoutABrokerComesWhenThereIsOne() {
        int port = FreePort.find();
        try (BrokerClient client = start(URI.create("mqtt://127.0.0.1:" + port))) {
            publish(client, STATUS, "idle", true);
            publish(client, STATUS, "printing", true);
            try (Mosquitto mosquitto = Mosquitto.startOn(port)) {
                awaitStatus(mosquitto, "printing");
                mosquitto.restart();
                awaitStatus(mosquitto, "printing");
            }
        }
    }

    /** Simulates a library thread that missed the end; such threads are also started from where messages arrive. */
    private static Thread leftBehind() {
        Thread thread = new Thread(PublishingIT::waitForGood, "MQTT Snd: left behind");
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private static void waitForGood() {
        try {
            new CountDownLatch(1).await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void noThreadIsLeftBehindByAConnectionThatIsOver() throws InterruptedException {
        List<Thread> left = new CopyOnWriteArrayList<>();
        try (Mosquitto mosquitto = Mosquitto.start()) {
            BrokerClient client = started(new BrokerClient(
                    Alder.at(mosquitto.url()),
                    List.of(ANSWER),
                    (topic, payload, retained) -> left.add(leftBehind()),
                    Optional.empty()));
            mosquitto.publish(ANSWER, "one", true);
            Await.until("the first", DEADLINE, () -> left.size() == 1);
            mosquitto.restart();
            left.get(0).join(DEADLINE.toMillis());
            assertFalse(left.get(0).isAlive(), "after the next connection");
            mosquitto.publish(ANSWER, "two", true);
            Await.until("the second", DEADLINE, () -> left.size() == 2);
            assertTrue(left.get(1).isAlive(), "while the connection lasts");
            client.close();
            left.get(1).join(DEADLINE.toMillis());
            assertFalse(left.get(1).isAlive(), "after the client");
        }
    }
}
