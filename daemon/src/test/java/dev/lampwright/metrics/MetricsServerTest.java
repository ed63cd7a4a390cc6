package dev.lampwright.metrics;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.engine.Daemon;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.RawHttp;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What a Prometheus server reads from a daemon with an in-memory controller and without a broker. */
@Timeout(60)
class MetricsServerTest {
    private static final Map<String, String> NO_LABELS = Map.of();
    private static final double AMPERE = 1e-9;

    /** Base units that this daemon could use: prometheus.io, "Metric and label naming", base units; its table, and amperes. */
    private static final Set<String> UNITS =
            Set.of("seconds", "celsius", "meters", "bytes", "ratio", "volts", "amperes");

    /** Units that are not base units, and suffixes that belong to the metric's type: promtool's "check metrics", from memory. */
    private static final List<String> NOT_IN_A_NAME = List.of(
            "milliseconds",
            "microseconds",
            "nanoseconds",
            "ms",
            "us",
            "ns",
            "minutes",
            "hours",
            "milliamps",
            "ma",
            "percent",
            "kilobytes",
            "counter",
            "gauge",
            "histogram",
            "summary",
            "avg",
            "min",
            "max");

    private final HttpClient http = HttpClient.newHttpClient();
    private Daemon daemon;
    private MetricsServer server;

    private static Config config() throws ConfigException {
        return ConfigFile.read("""
                broker.url = "mqtt://127.0.0.1:%d"
                printer.readings.job.progress.topic = "shop/alder/job"
                controller.port = "memory"
                supply.ceiling_mA = 400
                strip = { pixels = 20, channel_mA = 10, idle_mA = 1 }
                looks.silent = { layers = [{ colour = "white" }] }
                """.formatted(FreePort.find()), "alder.toml");
    }

    @BeforeEach
    void start() throws ConfigException, IOException {
        MemoryController controller =
                new MemoryController(MemoryController.BOARD, (light, sequence, frame, nanos) -> {});
        daemon = new Daemon(
                config(),
                config -> new MemoryLine(controller, config.controller().baud(), System::nanoTime));
        server = MetricsServer.start(0, ProcessMetrics.of(daemon));
        daemon.start();
    }

    @AfterEach
    void stop() {
        server.close();
        daemon.close();
    }

    private HttpResponse<String> get(String path) {
        return send(HttpRequest.newBuilder(url(path)).build());
    }

    private URI url(String path) {
        return URI.create("http://127.0.0.1:" + server.port() + path);
    }

    private HttpResponse<String> send(HttpRequest request) {
        try {
            return http.send(request, BodyHandlers.ofString());
        } catch (IOException e) {
            throw new AssertionError(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    private Exposition scrape() {
        return Exposition.parse(get("/metrics").body());
    }

    private double value(String name) {
        return scrape().value(name, NO_LABELS);
    }

    /** prometheus.io, "Exposition formats": the content type of the text format. */
    @Test
    void speaksTheTextFormat() {
        HttpResponse<String> response = get("/metrics");
        assertEquals(200, response.statusCode());
        String type = response.headers().firstValue("Content-Type").orElseThrow();
        assertTrue(type.startsWith("text/plain; version=0.0.4"), type);
        assertFalse(Exposition.parse(response.body()).families().isEmpty());
    }

    /** prometheus.io, "Metric and label naming", and what promtool's "check metrics" reports. */
    @Test
    void everyNameKeepsToTheConventions() {
        scrape().families().forEach((name, family) -> {
            assertTrue(name.matches("lampwright(_[a-z]+)+"), name);
            assertFalse(family.help().isEmpty(), name + " has no help");
            assertEquals(family.type().equals("counter"), name.endsWith("_total"), name + " is a " + family.type());
            Set<String> words = Set.of(name.split("_"));
            NOT_IN_A_NAME.forEach(word -> assertFalse(words.contains(word), name));
            UNITS.stream()
                    .filter(words::contains)
                    .forEach(unit -> assertTrue(name.replaceFirst("_total$", "").endsWith("_" + unit), name));
            family.samples()
                    .forEach(sample -> sample.labels().keySet().forEach(label -> {
                        assertTrue(label.matches("[a-z]+"), label);
                        assertFalse(
                                words.contains(label) && !label.equals("state"), "the label is in the name: " + name);
                    }));
        });
    }

    @Test
    void everyNameIsInTheHandbook() throws IOException {
        String page = Files.readString(Path.of("doc", "metrics.md"));
        scrape().families().keySet().forEach(name -> {
            String row = "`" + name.replaceFirst("^lampwright_", "");
            assertTrue(page.contains(row + "`") || page.contains(row + "{"), name + " is not in metrics.md");
        });
    }

    @Test
    void tellsWhatTheDaemonDoes() {
        Await.until("frames shown", () -> value("lampwright_frames_shown_total") > 10);
        Exposition told = scrape();
        assertTrue(told.value("lampwright_frames_total", NO_LABELS)
                >= told.value("lampwright_frames_sent_total", NO_LABELS));
        assertEquals(1, told.value("lampwright_link_up", NO_LABELS));
        assertEquals(0, told.value("lampwright_broker_connected", NO_LABELS));
        assertEquals(0, told.value("lampwright_printer_messages_total", NO_LABELS));
        assertEquals(1, told.value("lampwright_printer_state", Map.of("state", "silent")));
        assertEquals(0, told.value("lampwright_printer_state", Map.of("state", "printing")));
        assertFalse(told.families().containsKey("lampwright_printer_message_age_seconds"), "nothing was heard");
    }

    /** White on 20 pixels asks for 20 × 3 × 10 mA plus 20 mA for dark pixels, and gets no more than 400 mA. */
    @Test
    void currentIsToldAgainstTheCeilingInAmperes() {
        Await.until("dimmed frames", () -> value("lampwright_guard_dimmed_frames_total") > 10);
        Exposition told = scrape();
        assertEquals(0.4, told.value("lampwright_strip_ceiling_amperes", NO_LABELS), AMPERE);
        double current = told.value("lampwright_strip_current_amperes", NO_LABELS);
        assertTrue(current > 0.02 && current <= 0.4, current + " A");
        assertEquals(0, told.value("lampwright_guard_held_frames_total", NO_LABELS));
    }

    @Test
    void whatPeopleAskedForIsToldWithItsEnd() {
        assertEquals(0, value("lampwright_asked", "look"));
        assertFalse(scrape().families().containsKey("lampwright_asked_until_timestamp_seconds"));
        long before = System.currentTimeMillis();
        daemon.desk().ask("look", "{\"look\": \"done\", \"for_s\": 3600}");
        daemon.desk().ask("pixels", "{\"pixels\": {\"3\": \"red\", \"5\": \"red\"}, \"until\": \"changed\"}");
        long after = System.currentTimeMillis();
        assertEquals(1, value("lampwright_asked", "look"));
        assertEquals(2, value("lampwright_asked", "pixels"));
        assertEquals(0, value("lampwright_asked", "brightness"));
        double end = value("lampwright_asked_until_timestamp_seconds", "look");
        assertTrue(end >= before / 1000.0 + 3599 && end <= after / 1000.0 + 3601, end + " s");
        assertEquals(Double.POSITIVE_INFINITY, value("lampwright_asked_until_timestamp_seconds", "pixels"));
    }

    private double value(String name, String ask) {
        return scrape().value(name, Map.of("ask", ask));
    }

    /** prometheus.io, "Exposition formats", histograms: cumulative, up to +Inf, which is the count. */
    @Test
    void latenessIsAHistogram() {
        Await.until("some frames", () -> value("lampwright_frames_total") > 20);
        Exposition.Family late = scrape().families().get("lampwright_frame_late_seconds");
        assertEquals("histogram", late.type());
        List<Exposition.Sample> buckets = late.samples().stream()
                .filter(sample -> sample.name().endsWith("_bucket"))
                .toList();
        List<Double> counts = buckets.stream().map(Exposition.Sample::value).toList();
        assertEquals(counts.stream().sorted().toList(), counts);
        List<String> bounds =
                buckets.stream().map(sample -> sample.labels().get("le")).toList();
        assertEquals("1.0E-4", bounds.get(0));
        assertEquals("+Inf", bounds.get(bounds.size() - 1));
        Map<String, Double> whole = late.samples().stream()
                .filter(sample -> !sample.name().endsWith("_bucket"))
                .collect(Collectors.toMap(Exposition.Sample::name, Exposition.Sample::value));
        double count = whole.get("lampwright_frame_late_seconds_count");
        assertEquals(counts.get(counts.size() - 1), count);
        assertAbove(20, count);
        assertTrue(whole.get("lampwright_frame_late_seconds_sum") > 0);
    }

    @Test
    void nothingElseIsToldThere() {
        assertEquals(404, get("/").statusCode());
        assertEquals(404, get("/metrics/more").statusCode());
        HttpRequest post = HttpRequest.newBuilder(url("/metrics"))
                .POST(BodyPublishers.ofString("x"))
                .build();
        assertEquals(405, send(post).statusCode());
    }

    @Test
    void listensOnLoopbackAlone() throws IOException {
        for (NetworkInterface network : NetworkInterface.networkInterfaces().toList()) {
            for (InetAddress address : network.inetAddresses().toList()) {
                if (!address.isLoopbackAddress()) {
                    try (Socket socket = new Socket()) {
                        InetSocketAddress there = new InetSocketAddress(address, server.port());
                        assertThrows(IOException.class, () -> socket.connect(there, 1000), there.toString());
                    }
                }
            }
        }
    }

    @Test
    void whoeverNeverEndsAQuestionIsHungUpOn() throws IOException {
        try (Socket slow = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
            slow.getOutputStream().write("GET /metr".getBytes(StandardCharsets.US_ASCII));
            slow.getOutputStream().flush();
            assertEquals(200, get("/metrics").statusCode());
        }
    }

    @Test
    void aPortThatIsTakenIsToldInALine() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            int port = taken.getLocalPort();
            IOException told =
                    assertThrows(IOException.class, () -> MetricsServer.start(port, ProcessMetrics.of(daemon)));
            assertTrue(told.getMessage().startsWith("metrics.port " + port + " is not available ("), told.getMessage());
            assertTrue(told.getMessage().contains("choose another port"), told.getMessage());
            assertEquals(1, told.getMessage().lines().count());
        }
    }

    @Test
    void whatIsClosedListensNoMore() {
        int port = server.port();
        server.close();
        assertFalse(FreePort.isListening(port));
    }

    /** A foreign name that somebody has pointed at loopback: RFC 9110, section 15.5.20. */
    @Test
    void answersByItsOwnNamesOnly() throws IOException {
        for (String own : List.of("localhost", "LocalHost:9464", "127.0.0.1:9464", "[::1]")) {
            assertTrue(
                    RawHttp.answerTo(
                                    server.port(),
                                    "GET /metrics HTTP/1.1\r\nHost: " + own + "\r\nConnection: close\r\n\r\n")
                            .startsWith("HTTP/1.1 200 "),
                    own);
        }
        for (String foreign : List.of("Host: alder.example\r\n", "Host: localhost.example:9464\r\n", "Host: \r\n")) {
            assertTrue(
                    RawHttp.answerTo(server.port(), "GET /metrics HTTP/1.1\r\n" + foreign + "Connection: close\r\n\r\n")
                            .startsWith("HTTP/1.1 421 "),
                    foreign);
        }
    }

    @Test
    void brokenRequestsLeaveNothingInTheLog() throws IOException {
        try (CapturedLog log = new CapturedLog("dev.lampwright.metrics")) {
            RawHttp.answerTo(
                    server.port(),
                    "GET /metrics HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\n\r\nFFFFFFFFFFFF\r\n");
            RawHttp.answerTo(server.port(), "GET mailto:alder HTTP/1.1\r\nHost: localhost\r\n\r\n");
            assertTrue(RawHttp.answerTo(
                            server.port(), "GET /metrics HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
                    .startsWith("HTTP/1.1 200 "));
            assertEquals(List.of(), log.lines());
        }
    }
}
