package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.TalkSpec;
import dev.lampwright.cue.Wish;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.link.Line;
import dev.lampwright.link.LineException;
import dev.lampwright.link.LinkState;
import dev.lampwright.protocol.Frame;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A daemon switches to another configuration while it runs. Its broker does not exist, so its state is silent throughout. */
class DaemonChangeTest {
    private static final int HALF = 128;

    private final List<byte[]> shown = new CopyOnWriteArrayList<>();
    private final MemoryController controller = new MemoryController(MemoryController.BOARD, this::note);
    private final MemoryLine line = new MemoryLine(controller, 500_000, System::nanoTime);
    private final int freePort = FreePort.find();

    @Test
    void looksFadeInWithoutADarkFrame() throws ConfigException {
        try (Daemon daemon = new Daemon(config("red", 10), same -> line)) {
            daemon.start();
            Await.until("all red", () -> newestIs(10, HALF, 0));
            int before = shown.size();
            daemon.change(config("blue", 10));
            Await.until("all blue", () -> newestIs(10, 0, HALF));
            List<byte[]> since = List.copyOf(shown.subList(before, shown.size()));
            assertTrue(since.stream().anyMatch(strip -> red(strip) > 5 && blue(strip) > 5), "no frame between the two");
            since.forEach(strip -> assertEquals(HALF, red(strip) + blue(strip), 3));
        }
    }

    @Test
    void anotherStripIsSetUpAnew() throws ConfigException {
        try (Daemon daemon = new Daemon(config("red", 10), same -> line)) {
            daemon.start();
            Await.until("ten pixels of red", () -> newestIs(10, HALF, 0));
            daemon.change(config("blue", 7));
            Await.until("seven pixels of blue", () -> newestIs(7, 0, HALF));
        }
    }

    @Test
    void whatCannotBePutTogetherChangesNothing() throws ConfigException {
        try (Daemon daemon = new Daemon(config("red", 10), same -> line)) {
            daemon.start();
            Await.until("ten pixels of red", () -> newestIs(10, HALF, 0));
            Config broken = withoutCues(config("blue", 7));
            assertThrows(RuntimeException.class, () -> daemon.change(broken));
            int before = shown.size();
            Await.until("frames go on", () -> shown.size() > before + 5);
            assertTrue(newestIs(10, HALF, 0));
            daemon.change(config("blue", 7));
            Await.until("seven pixels of blue", () -> newestIs(7, 0, HALF));
        }
    }

    /** The parts are built before any is replaced: if one cannot be created, controller, light and broker stay unchanged. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void whatFailsLastChangesNothingEither(boolean byLine) throws ConfigException {
        Function<Config, Line> lines = config -> {
            if (byLine && config.setup().pixels() == 7) {
                throw new IllegalStateException("no such line");
            }
            return line;
        };
        try (Daemon daemon = new Daemon(config("red", 10), lines)) {
            daemon.start();
            Await.until("ten pixels of red", () -> newestIs(10, HALF, 0));
            FrameTap tap = daemon.tap();
            Config blue = config("blue", 7);
            Config broken = byLine ? blue : withoutBindings(blue);
            assertThrows(RuntimeException.class, () -> daemon.change(broken));
            assertSame(tap, daemon.tap());
            int before = shown.size();
            Await.until("frames go on", () -> shown.size() > before + 5);
            assertTrue(newestIs(10, HALF, 0));
        }
    }

    /** It is used elsewhere meanwhile, as by the fitting on the page. */
    @Test
    void aReleasedControllerIsLeftAloneAndComesBackAsConfiguredByThen() throws ConfigException {
        try (Daemon daemon = new Daemon(config("red", 10), same -> line)) {
            daemon.start();
            Await.until("ten pixels of red", () -> newestIs(10, HALF, 0));
            daemon.releaseController();
            daemon.releaseController();
            Await.until("the port is free", () -> daemon.link().state() == LinkState.DOWN);
            int before = shown.size();
            long pulse = daemon.pulse();
            Await.until("it lives on", () -> daemon.pulse() > pulse + 2);
            daemon.change(config("blue", 7));
            long later = daemon.pulse();
            Await.until("it lives on with the change", () -> daemon.pulse() > later + 2);
            assertEquals(before, shown.size(), "nothing is sent");
            daemon.resumeController();
            daemon.resumeController();
            Await.until("seven pixels of blue", () -> newestIs(7, 0, HALF));
        }
    }

    @Test
    void aDaemonThatHasEndedLightsNothingAnyMore() throws ConfigException {
        Daemon daemon = new Daemon(config("red", 10), same -> line);
        daemon.start();
        Await.until("ten pixels of red", () -> newestIs(10, HALF, 0));
        daemon.releaseController();
        daemon.close();
        daemon.resumeController();
        Await.until("the port is free", () -> daemon.link().state() == LinkState.DOWN);
    }

    /** A configuration that is never read from a file. */
    private static Config withoutBindings(Config config) {
        return new Config(
                config.framesPerSecond(),
                new TalkSpec(
                        config.broker(),
                        Collections.singletonMap("", null),
                        config.talk().prefix()),
                config.controller(),
                config.light(),
                config.atEnd(),
                config.desk(),
                config.mounting(),
                config.page(),
                config.ownTokens(),
                config.metricsPort(),
                config.wiring(),
                config.keepHistory());
    }

    /** A configuration that is never read from a file. */
    private static Config withoutCues(Config config) {
        return config.with(config.light().showing(List.of()));
    }

    /** A daemon whose link has died would otherwise feed its watchdog for ever, and show nothing. */
    @Test
    void theStandstillOfAThreadStopsThePulse() throws ConfigException {
        try (Daemon daemon = new Daemon(config("red", 10), same -> new Deadly())) {
            assertEquals(0, daemon.pulse());
            daemon.start();
            Await.until("a pulse to stand still while frames go on", () -> {
                long pulse = daemon.pulse();
                return daemon.frames().snapshot().frames() > pulse + 5 && daemon.pulse() == pulse;
            });
        }
    }

    @Test
    void thePulseGoesOnWhileAllThreadsDo() throws ConfigException {
        try (Daemon daemon = new Daemon(config("red", 10), same -> line)) {
            daemon.start();
            Await.until("ten pixels of red", () -> newestIs(10, HALF, 0));
            long pulse = daemon.pulse();
            Await.until("the pulse to go on", () -> daemon.pulse() > pulse + 5);
        }
    }

    @Test
    void whatWasAskedForStaysWhileTheStripHasIt() throws ConfigException {
        try (Daemon daemon = new Daemon(config("red", 10), same -> line)) {
            daemon.start();
            assertTrue(daemon.desk()
                    .ask("pixels", "{\"pixels\": {\"3\": \"lime\"}}")
                    .done());
            daemon.change(config("blue", 10));
            assertEquals(40, daemon.desk().wishes().floats(Wish.PIXELS).size());
            daemon.change(config("blue", 7));
            assertEquals(28, daemon.desk().wishes().floats(Wish.PIXELS).size());
            daemon.change(config("blue", 3));
            assertEquals(List.of(), daemon.desk().wishes().floats(Wish.PIXELS));
        }
    }

    /** A line that breaks its promise not to throw when it is closed. */
    private static final class Deadly implements Line {
        @Override
        public void open() throws LineException {
            throw new LineException("is not there");
        }

        @Override
        public int read(byte[] into, int timeoutMillis) {
            return 0;
        }

        @Override
        public void write(byte[] bytes, int count) {}

        @Override
        public void close() {
            throw new IllegalStateException("cannot be closed, which ends a thread here");
        }

        @Override
        public int baud() {
            return 9600;
        }

        @Override
        public String name() {
            return "deadly";
        }
    }

    private Config config(String colour, int pixels) throws ConfigException {
        String text = """
                [broker]
                url = "mqtt://127.0.0.1:%d"
                [printer.state]
                topic = "shop/alder/job"
                printing = ["RUN"]
                [controller]
                port = "memory"
                [strip]
                pixels = %d
                [looks.silent]
                layers = [{ colour = "%s", opacity = 0.5 }]
                [[cues]]
                look = "silent"
                fade_s = 0.3
                """;
        return ConfigFile.read(text.formatted(freePort, pixels, colour), "test.toml");
    }

    private void note(MemoryController.Light light, int sequence, Frame frame, long nanos) {
        if (light == MemoryController.Light.WHOLE) {
            shown.add(frame.strip().clone());
        }
    }

    private boolean newestIs(int pixels, int red, int blue) {
        if (shown.isEmpty()) {
            return false;
        }
        byte[] strip = shown.get(shown.size() - 1);
        return strip.length == 3 * pixels && red(strip) == red && blue(strip) == blue;
    }

    private static int red(byte[] strip) {
        return strip[1] & 0xFF;
    }

    private static int blue(byte[] strip) {
        return strip[2] & 0xFF;
    }
}
