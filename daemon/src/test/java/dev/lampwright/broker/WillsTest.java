package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import dev.lampwright.upkeep.RigName;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Wills at a broker that behaves as the tests require. */
@Timeout(60)
final class WillsTest {
    private static final int PINGREQ = 12;
    private static final int DISCONNECT = 14;
    private static final Patience SHORT = new Patience(
            Duration.ofSeconds(5),
            Duration.ofSeconds(5),
            Duration.ofMillis(50),
            Duration.ofSeconds(2),
            Duration.ofMillis(5),
            Duration.ofMillis(10));

    private final int port = FreePort.find();
    private final Turnstile turnstile = new Turnstile();
    private final List<String> events = new CopyOnWriteArrayList<>();
    /** The content of each CONNECT, and what came after it. */
    private final List<String> logins = new CopyOnWriteArrayList<>();

    private final AtomicInteger pings = new AtomicInteger();
    private final AtomicInteger goodbyes = new AtomicInteger();
    private final AtomicInteger gone = new AtomicInteger();
    private volatile boolean answers = true;
    private volatile int code;
    private Wills wills = new Wills(at(Optional.empty(), Optional.empty()), SHORT, turnstile);

    @AfterEach
    void end() {
        wills.close();
    }

    private Broker at(Optional<String> name, Optional<Path> passwordFile) {
        return new Broker(Alder.url(port), Optional.empty(), name, passwordFile);
    }

    private FakeBroker broker() {
        return FakeBroker.on(port, this::play);
    }

    private void play(FakeBroker.Peer peer) throws IOException {
        logins.add(new String(peer.packet(), StandardCharsets.ISO_8859_1));
        peer.send(0x20, 2, 0, code);
        try {
            while (peer.packet().length == 0) {
                if (peer.type() == DISCONNECT) {
                    goodbyes.incrementAndGet();
                    return;
                }
                assertEquals(PINGREQ, peer.type());
                pings.incrementAndGet();
                if (answers) {
                    peer.send(0xD0, 0);
                }
            }
        } finally {
            gone.incrementAndGet();
        }
    }

    private Wills.Held hold(String rig, Will will) {
        Wills.Held[] held = new Wills.Held[1];
        RigName.during(
                rig,
                () -> held[0] = wills.hold(will, new Wills.Watcher() {
                    @Override
                    public void held() {
                        events.add("held");
                    }

                    @Override
                    public void lost() {
                        events.add("lost");
                    }
                }));
        return held[0];
    }

    private Wills.Held hold() {
        return hold("alder", new Will("lampwright/alder/status", "lost", "off"));
    }

    private void awaitEvents(String... expected) {
        Await.until(List.of(expected) + " of " + events, () -> events.size() >= expected.length);
        assertEquals(List.of(expected), events);
    }

    /** MQTT 3.1.1, section 3.1: name and level of the protocol, flags, keep-alive in s; then each text with its length in two bytes. */
    @Test
    void logsInWithTheWillAndAllThatTheBrokerAsksFor(@TempDir Path folder) throws IOException {
        Path password = Files.writeString(folder.resolve("password"), "wörd\n");
        wills = new Wills(at(Optional.of("lamp"), Optional.of(password)), SHORT, turnstile);
        try (FakeBroker broker = broker()) {
            Wills.Held held = hold("alder", new Will("shop/ä/status", "x".repeat(300), "off"));
            assertEquals(BrokerState.Phase.CONNECTING, held.state().phase());
            assertEquals(0, broker.connections(), "before the main connection");
            turnstile.open();
            awaitEvents("held");
            assertEquals(BrokerState.Phase.CONNECTED, held.state().phase());
            String login = new String(logins.get(0).getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8);
            assertTrue(logins.get(0).startsWith("\0\4MQTT\4\u00EE\0\2\0\27lampwright-"), login);
            assertTrue(login.endsWith("\0\16shop/ä/status\1\54" + "x".repeat(300) + "\0\4lamp\0\5wörd"), login);
        }
    }

    @Test
    void isKeptAliveAndForgottenAfterAGoodbye() {
        turnstile.open();
        try (FakeBroker broker = broker()) {
            Wills.Held held = hold();
            Await.until("pings", () -> pings.get() >= 2);
            assertEquals(1, broker.connections());
            held.release(true);
            Await.until("the goodbye", () -> goodbyes.get() == 1);
            assertEquals("closed", held.state().reason());
            awaitEvents("held");
        }
    }

    @Test
    void whoLeavesWithoutAGoodbyeIsReportedLost() {
        turnstile.open();
        try (FakeBroker broker = broker()) {
            Wills.Held held = hold();
            awaitEvents("held");
            held.release(false);
            Await.until("the end", () -> gone.get() == 1);
            assertEquals(0, goodbyes.get());
            assertEquals(1, broker.connections());
        }
    }

    @Test
    void aConnectionThatBreaksIsMadeAgainUnderTheSameName() {
        turnstile.open();
        try (FakeBroker broker = broker()) {
            hold();
            awaitEvents("held");
            broker.hangUp();
            awaitEvents("held", "lost", "held");
            assertEquals(logins.get(0), logins.get(1));
        }
    }

    @Test
    void aPingWithoutAnAnswerIsALoss() {
        turnstile.open();
        answers = false;
        wills = new Wills(
                at(Optional.empty(), Optional.empty()),
                new Patience(
                        SHORT.network(),
                        Duration.ofMillis(300),
                        SHORT.ping(),
                        SHORT.keepAlive(),
                        SHORT.firstPause(),
                        SHORT.longestPause()),
                turnstile);
        try (FakeBroker broker = broker()) {
            hold();
            Await.until("the loss", () -> events.size() >= 3);
            assertEquals(List.of("held", "lost", "held"), events.subList(0, 3));
            assertTrue(broker.connections() >= 2);
        }
    }

    /** When the main connection has ended, nothing is published before each will is known to be held. */
    @Test
    void whatIsInDoubtIsAskedAtOnce() {
        turnstile.open();
        try (FakeBroker broker = broker()) {
            hold();
            awaitEvents("held");
            wills.doubt();
            awaitEvents("held", "lost", "held");
            assertEquals(1, broker.connections());
        }
    }

    @Test
    void saysWhyTheBrokerRefusesAndTriesAgain() {
        turnstile.open();
        code = 5;
        try (FakeBroker broker = broker()) {
            Wills.Held held = hold();
            Await.until("the refusal", () -> held.state().reason().contains("refused the login"));
            assertEquals(BrokerState.Phase.LOST, held.state().phase());
            code = 0;
            awaitEvents("held");
            assertTrue(broker.connections() >= 2);
        }
    }

    /** The first is answered; the second connection is accepted and never answered. */
    @Test
    void whoIsNotAnsweredKeepsNobodyFromItsPings() {
        turnstile.open();
        AtomicInteger connections = new AtomicInteger();
        try (FakeBroker broker = FakeBroker.on(port, peer -> {
            if (connections.incrementAndGet() == 1) {
                play(peer);
            } else {
                peer.silence();
            }
        })) {
            hold();
            awaitEvents("held");
            Wills.Held silent = hold("birch", new Will("lampwright/birch/status", "lost", "off"));
            Await.until("it is tried", () -> broker.connections() == 2);
            int before = pings.get();
            Await.until("pings of the first", () -> pings.get() > before + 1);
            assertFalse(silent.state().phase() == BrokerState.Phase.CONNECTED);
            awaitEvents("held");
        }
    }
}
