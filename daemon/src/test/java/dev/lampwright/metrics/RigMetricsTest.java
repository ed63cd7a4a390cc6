package dev.lampwright.metrics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.rig.TestShop;
import dev.lampwright.testing.FreePort;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a Prometheus server reads from a process with several rigs. */
@Timeout(60)
class RigMetricsTest {
    @TempDir
    private Path folder;

    private static List<String> told(int port) throws IOException, InterruptedException {
        URI uri = URI.create("http://127.0.0.1:" + port + "/metrics");
        return HttpClient.newHttpClient()
                .send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofLines())
                .body()
                .toList();
    }

    private static long count(List<String> lines, String beginning) {
        return lines.stream().filter(line -> line.startsWith(beginning)).count();
    }

    /** Text format: all lines of a metric are one group, with one HELP and one TYPE (prometheus.io, "Exposition formats"). */
    @Test
    void everySeriesHasTheNameOfItsRig() throws ConfigException, IOException, InterruptedException {
        URI nobody = URI.create("mqtt://127.0.0.1:" + FreePort.find());
        try (TestShop shop = new TestShop(folder, nobody, 30, System::nanoTime)) {
            shop.rig("alder", "")
                    .rig("birch", "")
                    .rig("rowan", "strip.pixels = 0\n")
                    .read();
            shop.awaitRunning("alder", "birch");
            MetricsServer server = MetricsServer.start(0, ProcessMetrics.of(shop.rigs()));
            List<String> lines = told(server.port());
            server.close();
            assertEquals(1, count(lines, "# HELP lampwright_frames_total "));
            assertEquals(1, count(lines, "# TYPE lampwright_printer_state gauge"));
            for (String rig : List.of("alder", "birch")) {
                String label = "{rig=\"" + rig + "\"";
                assertEquals(1, count(lines, "lampwright_frames_total" + label + "}"));
                assertEquals(1, count(lines, "lampwright_printer_state" + label + ",state=\"silent\"} 1.0"));
                assertEquals(1, count(lines, "lampwright_frame_late_seconds_count" + label + "}"));
                assertEquals(1, count(lines, "lampwright_frame_late_seconds_bucket" + label + ",le=\"+Inf\"}"));
                assertEquals(1, count(lines, "lampwright_rig_runs" + label + "} 1.0"));
                assertEquals(1, count(lines, "lampwright_rig_file_rejected" + label + "} 0.0"));
            }
            assertEquals(0, count(lines, "lampwright_frames_total{rig=\"rowan\""));
            assertEquals(1, count(lines, "lampwright_rig_runs{rig=\"rowan\"} 0.0"));
            assertEquals(1, count(lines, "lampwright_rig_file_rejected{rig=\"rowan\"} 1.0"));
            assertTrue(
                    lines.stream()
                            .filter(line -> line.startsWith("lampwright_"))
                            .allMatch(line -> line.contains("rig=\"")),
                    "none without a rig");
        }
    }
}
