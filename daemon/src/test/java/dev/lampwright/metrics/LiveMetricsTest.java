package dev.lampwright.metrics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.engine.Daemon;
import dev.lampwright.http.RetriedServer;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.FreePort;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class LiveMetricsTest {
    private static final long PAUSE_NANOS = TimeUnit.SECONDS.toNanos(RetriedServer.PAUSE_S);

    private final AtomicLong nanos = new AtomicLong();
    private final CapturedLog log = new CapturedLog(LiveMetrics.class.getName());
    private Daemon daemon;
    private LiveMetrics metrics;

    /** A daemon that has not been started: it still has figures. */
    @BeforeEach
    void make() throws ConfigException {
        MemoryController controller = new MemoryController(MemoryController.BOARD, (light, sequence, frame, at) -> {});
        daemon = new Daemon(
                ConfigFile.read("""
                broker.url = "mqtt://127.0.0.1:%d"
                printer.readings.job.progress.topic = "shop/alder/job"
                controller.port = "memory"
                strip.pixels = 10
                """.formatted(FreePort.find()), "alder.toml"),
                config -> new MemoryLine(controller, config.controller().baud(), System::nanoTime));
        metrics = new LiveMetrics(daemon, nanos::get);
    }

    @AfterEach
    void close() {
        metrics.close();
        daemon.close();
        log.close();
    }

    private static String told(int port) {
        return "INFO metrics are at http://127.0.0.1:" + port + "/metrics";
    }

    @Test
    void aPortThatIsGivenFreeIsTakenAtTheNextAttempt() throws IOException {
        int port;
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = taken.getLocalPort();
            metrics.follow(OptionalInt.of(port));
            for (int attempt = 0; attempt < 3; attempt++) {
                nanos.addAndGet(PAUSE_NANOS);
                metrics.lookAround();
            }
        }
        nanos.addAndGet(PAUSE_NANOS - 1);
        metrics.lookAround();
        assertFalse(FreePort.isListening(port), "too early");
        nanos.addAndGet(1);
        metrics.lookAround();
        assertTrue(FreePort.isListening(port));
        nanos.addAndGet(PAUSE_NANOS);
        metrics.lookAround();
        assertEquals(2, log.lines().size(), log.lines().toString());
        assertTrue(log.lines()
                .get(0)
                .startsWith("WARN there are no metrics: metrics.port " + port + " is not available ("));
        assertTrue(
                log.lines().get(0).endsWith("; trying again every 5 s"),
                log.lines().get(0));
        assertEquals(told(port), log.lines().get(1));
    }

    @Test
    void theyComeGoAndMoveWithTheConfiguration() {
        int first = FreePort.find();
        int second = FreePort.find();
        metrics.follow(OptionalInt.empty());
        assertEquals(List.of(), log.lines());
        metrics.follow(OptionalInt.of(first));
        metrics.follow(OptionalInt.of(first));
        assertTrue(FreePort.isListening(first));
        metrics.follow(OptionalInt.of(second));
        assertFalse(FreePort.isListening(first));
        assertTrue(FreePort.isListening(second));
        metrics.follow(OptionalInt.empty());
        assertFalse(FreePort.isListening(second));
        assertEquals(List.of(told(first), told(second)), log.lines());
    }

    @Test
    void whatIsNotWantedAnyMoreIsNotTriedAgain() throws IOException {
        int port;
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = taken.getLocalPort();
            metrics.follow(OptionalInt.of(port));
        }
        metrics.follow(OptionalInt.empty());
        nanos.addAndGet(PAUSE_NANOS);
        metrics.lookAround();
        assertFalse(FreePort.isListening(port));
    }
}
