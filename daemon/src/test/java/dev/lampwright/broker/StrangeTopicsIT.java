package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.LogLines;
import dev.lampwright.testing.Mosquitto;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.junit.jupiter.api.Test;

/** Topics that MQTT 3.1.1 allows (section 1.5.3) and the client library does not. */
final class StrangeTopicsIT {
    private static final Duration DEADLINE = Duration.ofSeconds(30);

    private final Queue<String> heard = new ConcurrentLinkedQueue<>();

    private BrokerClient client(Broker broker, Optional<Will> will, String... filters) {
        BrokerClient client = new BrokerClient(
                broker,
                List.of(filters),
                (topic, payload, retained) -> heard.add(topic + "=" + new String(payload, StandardCharsets.UTF_8)),
                will);
        client.start();
        return client;
    }

    private void awaitHeard(String what) {
        Await.until("to hear " + what, DEADLINE, () -> heard.contains(what));
    }

    @Test
    void areSubscribedToPublishedAndHeardAtARealBroker() {
        Will will = new Will("shop/🛏/status", "lost", "gone");
        try (LogLines log = new LogLines();
                Mosquitto mosquitto = Mosquitto.start();
                BrokerClient listener = client(
                        Alder.at(mosquitto.url()), Optional.empty(), "shop/+/room", "shop/🛏/#", "shop/alder/job")) {
            try (BrokerClient printer = client(Alder.at(mosquitto.url()), Optional.of(will), "nothing/🔥")) {
                printer.publish("shop/🔥/room", Alder.bytes("25"), true);
                awaitHeard("shop/🔥/room=25");
                printer.publish("shop/🛏/heat", Alder.bytes("61"), false);
                awaitHeard("shop/🛏/heat=61");
                printer.publish("shop/alder/job", Alder.bytes("ALARM"), false);
                awaitHeard("shop/alder/job=ALARM");
            }
            awaitHeard("shop/🛏/status=gone");
            assertEquals(BrokerState.Phase.CONNECTED, listener.state().phase());
            assertEquals(List.of(), log.with("WARN"));
        }
    }

    @Test
    void controlCharactersAndNoncharactersAreTopicsLikeOthers() {
        int port = FreePort.find();
        try (LogLines log = new LogLines();
                FakeBroker broker = FakeBroker.on(port, peer -> {
                    peer.connack(0);
                    peer.suback(1, 1);
                    peer.publish("a\u0001b", Alder.bytes("1"));
                    peer.publish("a\uFFFFb", Alder.bytes("2"));
                    peer.publish("a\uD83D\uDD25b", Alder.bytes("3"));
                    peer.publish("🔥".repeat(16_000), Alder.bytes("too long for the library"));
                    peer.publish("plain", Alder.bytes("4"));
                    peer.silence();
                });
                BrokerClient client = client(Alder.at(Alder.url(port)), Optional.empty(), "#")) {
            awaitHeard("plain=4");
            assertEquals(List.of("a\u0001b=1", "a\uFFFFb=2", "a\uD83D\uDD25b=3", "plain=4"), List.copyOf(heard));
            assertEquals(1, broker.connections());
            assertEquals(BrokerState.Phase.CONNECTED, client.state().phase());
            assertEquals(List.of(), log.with("WARN"));
        }
    }

    /**
     * One of 65 000 messages at QoS 2, never released, must not be kept: the connection ends with an explanation, and nothing is left of
     * it.
     */
    @Test
    void messagesAtQosTwoEndTheConnectionWithWords() {
        int port = FreePort.find();
        try (LogLines log = new LogLines();
                FakeBroker broker = FakeBroker.on(port, peer -> {
                    peer.connack(0);
                    peer.suback(1, 1);
                    for (int id = 1; id < 65_000; id++) {
                        peer.send(0x34, 6, 0, 1, 'a', id >> 8, id, 'x');
                    }
                    peer.silence();
                });
                BrokerClient client = client(Alder.at(Alder.url(port)), Optional.empty(), "#")) {
            Await.until("a third attempt", DEADLINE, () -> broker.connections() >= 3);
            assertEquals(
                    1, log.with("at QoS 2, though the subscription is at QoS 1").size());
            assertEquals(0, client.messages());
        }
    }
}
