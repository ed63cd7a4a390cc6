package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Metrics of the jar as its user runs it. */
@Timeout(60)
class MetricsIT {
    @TempDir
    private Path folder;

    private static List<String> on(int port) {
        return List.of("[metrics]", "port = " + port);
    }

    @Test
    void areToldWhereTheConfigurationAsksForThem() throws IOException, InterruptedException {
        int port = FreePort.find();
        try (Bench bench = new Bench(folder, Mosquitto.start(), on(port))) {
            bench.birch().tellJob(Birch.HELD, 10);
            bench.awaitPicture(Birch.still(Birch.HELD));
            HttpRequest ask = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/metrics"))
                    .build();
            String told = HttpClient.newHttpClient()
                    .send(ask, BodyHandlers.ofString())
                    .body();
            for (String line : List.of(
                    "lampwright_broker_connected 1.0",
                    "lampwright_link_up 1.0",
                    "lampwright_printer_state{state=\"held\"} 1.0",
                    "lampwright_strip_ceiling_amperes 0.6")) {
                assertTrue(told.lines().anyMatch(line::equals), () -> line + " in " + told);
            }
            assertTrue(told.contains("lampwright_printer_message_age_seconds"), told);
        }
    }

    @Test
    void aPortThatIsTakenIsToldOnceAndLightIsShownAllTheSame() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
                Bench bench = new Bench(folder, Mosquitto.start(), on(taken.getLocalPort()))) {
            bench.birch().tellJob(Birch.HELD, 10);
            bench.awaitPicture(Birch.still(Birch.HELD));
            String key = "metrics.port " + taken.getLocalPort();
            assertEquals(
                    1,
                    bench.daemon().linesWith(0, key).size(),
                    () -> bench.daemon().log().toString());
        }
    }
}
