package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.Promtool;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Metrics of the jar as its user runs it. */
@Timeout(60)
class MetricsIT {
    private static final Path RULES = Path.of("..", "systemd", "prometheus", "lampwright.rules.yml");
    private static final Path RULE_TESTS = Path.of("src", "test", "prometheus", "lampwright.rules.test.yml");

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
            assertEquals("", Promtool.checkMetrics(folder, told));
            assertAllAreTold(told);
        }
    }

    /** An alert on a metric that does not exist would never fire. */
    private static void assertAllAreTold(String metrics) throws IOException {
        List<String> named = Pattern.compile("\\blampwright_\\w+")
                .matcher(Files.readString(RULES))
                .results()
                .map(MatchResult::group)
                .distinct()
                .toList();
        assertTrue(named.size() > 8, named.toString());
        for (String name : named) {
            assertTrue(metrics.lines().anyMatch(line -> line.startsWith(name)), name);
        }
        assertTrue(metrics.contains("lampwright_frame_late_seconds_bucket{le=\"0.025\"}"), metrics);
    }

    @Test
    void theAlertRulesAreValidAndFireWhenTheyShould() throws IOException {
        Files.copy(RULES, folder.resolve(RULES.getFileName()));
        Path tests = Files.copy(RULE_TESTS, folder.resolve(RULE_TESTS.getFileName()));
        String checked = Promtool.checkRules(folder.resolve(RULES.getFileName()));
        assertTrue(checked.contains("SUCCESS: 6 rules found"), checked);
        String tested = Promtool.testRules(tests);
        assertTrue(tested.contains("SUCCESS"), tested);
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
