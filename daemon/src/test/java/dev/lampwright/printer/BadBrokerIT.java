package dev.lampwright.printer;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.FakeBroker;
import dev.lampwright.broker.PahoThreads;
import dev.lampwright.broker.Patience;
import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.LogLines;
import dev.lampwright.testing.Mosquitto;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A broker that fails at every stage of a connection, and then is a good one: a real Mosquitto on the same port. */
final class BadBrokerIT {
    private static final Duration DEADLINE = Duration.ofSeconds(30);
    private static final int TOPICS = Alder.bindings().topicFilters().size();
    private static final Patience SHORT = new Patience(
            Duration.ofMillis(500),
            Duration.ofMillis(600),
            Duration.ofMillis(500),
            Duration.ofSeconds(1),
            Duration.ofMillis(20),
            Duration.ofMillis(50));

    private final AtomicReference<PrinterStatus> newest = new AtomicReference<>(PrinterStatus.nothingHeard());

    static Stream<Arguments> badBrokers() {
        Stream<Arguments> scripts = Stream.of(
                script("closes at once", "connection was lost", peer -> {}),
                script("never answers", "not answered", FakeBroker.Peer::silence),
                script("closes after CONNECT", "connection was lost", FakeBroker.Peer::packet),
                script("half a CONNACK and silence", "not answered", peer -> {
                    peer.packet();
                    peer.send(0x20, 2);
                    peer.silence();
                }),
                script("half a CONNACK and closes", "connection was lost", peer -> {
                    peer.packet();
                    peer.send(0x20, 2, 0);
                }),
                script("CONNACK and closes", "connection was lost", peer -> peer.connack(0)),
                script("CONNACK and no SUBACK", "subscription was not answered", peer -> {
                    peer.connack(0);
                    peer.silence();
                }),
                script("SUBACK with too few codes", "answer to the subscription was wrong", peer -> {
                    peer.connack(0);
                    peer.suback(1, 1);
                    peer.silence();
                }),
                script("SUBACK refuses", "refuses the subscription to shop/alder/heat", peer -> {
                    peer.connack(0);
                    peer.suback(0x80, TOPICS);
                    peer.silence();
                }),
                script("closes in the middle of a message", "connection was lost", peer -> {
                    peer.connack(0);
                    peer.suback(1, TOPICS);
                    peer.send(0x30, 100, 0, 4, 's', 'h');
                }),
                script("stops answering", "stopped answering", peer -> {
                    peer.connack(0);
                    peer.suback(1, TOPICS);
                    peer.silence();
                }),
                script("is not MQTT", "", peer -> {
                    peer.send(Alder.bytes("HTTP/1.1 400 Bad Request\r\nConnection: close\r\n\r\n"));
                    peer.silence();
                }),
                script("zeros", "not MQTT", peer -> {
                    peer.send(new byte[1000]);
                    peer.silence();
                }),
                script("a length that does not end", "", peer -> {
                    peer.packet();
                    peer.send(0x30, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF);
                    peer.silence();
                }),
                script("a topic that is not text", "not valid MQTT", peer -> {
                    peer.connack(0);
                    peer.suback(1, TOPICS);
                    peer.send(0x30, 4, 0, 1, 0, 'x');
                    peer.silence();
                }),
                script("a message with QoS 3", "not valid MQTT", peer -> {
                    peer.connack(0);
                    peer.suback(1, TOPICS);
                    peer.send(0x36, 4, 0, 1, 'a', 'x');
                    peer.silence();
                }),
                script("an answer to no question", "", peer -> {
                    peer.connack(0);
                    peer.suback(1, TOPICS);
                    peer.send(0x90, 3, 0x77, 0x77, 0);
                    peer.silence();
                }));
        Stream<Arguments> refusals = IntStream.rangeClosed(1, 5)
                .mapToObj(code -> script("CONNACK with code " + code, refusal(code), peer -> peer.connack(code)));
        Stream<Arguments> garbage = IntStream.range(0, 3)
                .mapToObj(seed -> script("garbage " + seed, "", peer -> {
                    byte[] bytes = new byte[4096];
                    new Random(seed).nextBytes(bytes);
                    peer.packet();
                    peer.send(bytes);
                    peer.silence();
                }));
        return Stream.of(scripts, refusals, garbage).flatMap(all -> all);
    }

    private static Arguments script(String name, String words, FakeBroker.Script script) {
        return arguments(name, words, script);
    }

    /** MQTT 3.1.1, table 3.1, in our words. */
    private static String refusal(int code) {
        return switch (code) {
            case 1 -> "does not speak MQTT 3.1.1";
            case 2 -> "client id";
            case 3 -> "unavailable";
            case 4 -> "user name or the password";
            default -> "refused the login";
        };
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("badBrokers")
    void comesBackFrom(String name, String words, FakeBroker.Script script) {
        int port = FreePort.find();
        try (LogLines log = new LogLines();
                PrinterClient client = client(port)) {
            try (FakeBroker broker = FakeBroker.on(port, script)) {
                client.start();
                Await.until("a third attempt at " + name, DEADLINE, () -> broker.connections() >= 3);
                Await.until(
                        "words about " + name, DEADLINE, () -> !log.with(words).isEmpty());
            }
            hearsRealBroker(client, port);
            List<String> troubles = log.with("WARN");
            assertEquals(troubles.stream().distinct().toList(), troubles, "each trouble is told once");
            assertFalse(log.with("INFO").isEmpty(), "the end is told");
        }
        Await.until("the threads to end", DEADLINE, () -> PahoThreads.count() == 0);
    }

    @Test
    void comesBackFromNothing() {
        int port = FreePort.find();
        try (LogLines log = new LogLines();
                PrinterClient client = client(port)) {
            client.start();
            Await.until(
                    "words", DEADLINE, () -> log.with("nothing listens there").size() == 1);
            hearsRealBroker(client, port);
            assertEquals(1, log.with("nothing listens there").size());
            assertEquals(1, log.with(": connected").size());
        }
    }

    @Test
    void fiftyAttemptsLeaveNoThread() {
        int port = FreePort.find();
        try (PrinterClient client = client(port);
                FakeBroker broker = FakeBroker.on(port, peer -> peer.connack(0))) {
            client.start();
            Await.until("ten attempts", DEADLINE, () -> broker.connections() >= 10);
            int most = PahoThreads.MOST_FOR_ONE_CONNECTION;
            Await.until("few threads after ten attempts", DEADLINE, () -> PahoThreads.count() <= most);
            Await.until("sixty attempts", DEADLINE.multipliedBy(4), () -> broker.connections() >= 60);
            Await.until("few threads after sixty attempts", DEADLINE, () -> PahoThreads.count() <= most);
        }
        Await.until("the threads to end", DEADLINE, () -> PahoThreads.count() == 0);
    }

    @Test
    void closesQuicklyWhateverTheBrokerDoes() {
        int port = FreePort.find();
        try (FakeBroker broker = FakeBroker.on(port, FakeBroker.Peer::silence)) {
            PrinterClient client = client(port);
            client.start();
            Await.until("an attempt", DEADLINE, () -> broker.connections() >= 1);
            client.close();
            assertEquals("closed", client.brokerState().reason());
        }
        Await.until("the threads to end", DEADLINE, () -> PahoThreads.count() == 0);
    }

    @Test
    void cutsMessagesThatWouldFillTheMemory() {
        int port = FreePort.find();
        try (PrinterClient client = client(port);
                FakeBroker broker = FakeBroker.on(port, peer -> {
                    peer.connack(0);
                    peer.suback(1, TOPICS);
                    peer.publish(Alder.JOB, new byte[40 << 20]);
                    peer.publish(Alder.JOB, Alder.bytes("{\"phase\":\"RUN\"}"));
                    peer.silence();
                })) {
            client.start();
            Await.until("the message after", DEADLINE, () -> newest.get().state() == PrinterState.PRINTING);
            assertAtLeast(2, client.messages());
            assertAtLeast(1, broker.connections());
        }
    }

    private PrinterClient client(int port) {
        return new PrinterClient(Alder.at(Alder.url(port)), Alder.bindings(), System::nanoTime, newest::set, SHORT);
    }

    private void hearsRealBroker(PrinterClient client, int port) {
        try (Mosquitto mosquitto = Mosquitto.startOn(port)) {
            mosquitto.publish(Alder.JOB, "{\"phase\":\"PREHEAT\"}", true);
            Await.until("the status", DEADLINE, () -> newest.get().state() == PrinterState.WARMING);
            assertEquals(BrokerState.Phase.CONNECTED, client.brokerState().phase());
        }
    }
}
