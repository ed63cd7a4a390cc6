package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The daemon while its surroundings change: ports and its file. There is neither broker nor controller. */
@Timeout(60)
class RunIT {
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(20);

    @TempDir
    private Path folder;

    private Path config;
    private RunningDaemon daemon;

    @BeforeEach
    void name() {
        config = folder.resolve("alder.toml");
    }

    @AfterEach
    void end() {
        if (daemon != null) {
            daemon.close();
        }
    }

    @Test
    void portsThatAreTakenAtTheStartAreHadOnceTheyAreFree() throws IOException {
        int pagePort;
        int metricsPort;
        try (ServerSocket page = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
                ServerSocket metrics = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            pagePort = page.getLocalPort();
            metricsPort = metrics.getLocalPort();
            write("[page]\nport = " + pagePort + "\n[metrics]\nport = " + metricsPort + "\n");
            daemon = RunningDaemon.start(config);
            awaitLine("there is no live page: ");
            awaitLine("there are no metrics: ");
        }
        awaitLine("the live page is at http://127.0.0.1:" + pagePort + "/");
        awaitLine("metrics are at http://127.0.0.1:" + metricsPort + "/metrics");
        assertEquals(
                2,
                daemon.linesWith(0, "trying again every 5 s").size(),
                () -> daemon.log().toString());
    }

    /** With the small stacks that the service has. */
    @Test
    void aFileThatNestsTooDeepIsRefusedAndTheNextIsTakenUp() throws IOException {
        int first = FreePort.find();
        int second = FreePort.find();
        write("[metrics]\nport = " + first + "\n");
        daemon = RunningDaemon.start(config, "-Xss512k");
        awaitLine("metrics are at http://127.0.0.1:" + first + "/metrics");
        write("x=" + "[".repeat(900) + "1" + "]".repeat(900) + "\n");
        awaitLine(config + ":10: arrays, tables and dotted keys are nested more than 64 deep; ");
        awaitLine("the current configuration stays active");
        write("[metrics]\nport = " + second + "\n");
        awaitLine("metrics are at http://127.0.0.1:" + second + "/metrics");
        assertFalse(FreePort.isListening(first));
    }

    private void write(String more) throws IOException {
        Files.writeString(config, ServiceIT.CONFIG + more);
    }

    private void awaitLine(String text) {
        Await.until(
                () -> text + " in " + daemon.log(),
                () -> !daemon.linesWith(0, text).isEmpty(),
                LONGEST_WAIT);
    }
}
