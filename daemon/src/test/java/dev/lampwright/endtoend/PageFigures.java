package dev.lampwright.endtoend;

import com.sun.net.httpserver.HttpServer;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Browser;
import dev.lampwright.testing.Folders;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;

/**
 * Opens the live page in a real browser and prints how long it takes and how much is sent; not a test. The daemon runs as a separate
 * process with a strip of 30 pixels, all on loopback. In turn, the browser opens the page with an empty cache, the page with a filled
 * cache, and a page of one heading with the same opener policy: what the browser itself needs, as the policy makes it start a process.
 * Run it after {@code mvn package}, on a quiet machine, with the number of rounds, 15 by default:
 *
 * <pre>mvn -q -Pfigures test -DskipTests -Dfigures=dev.lampwright.endtoend.PageFigures -Dwith=15</pre>
 */
final class PageFigures {
    /** The time of the first paint, in ms since the navigation began. Source: W3C Paint Timing, first-contentful-paint. */
    private static final String FIRST_PAINT = """
            const [paint] = performance.getEntriesByName('first-contentful-paint');
            return paint === undefined ? -1 : paint.startTime;
            """;

    /** Everything that was sent for the page and its files. Source: W3C Resource Timing, transferSize. */
    private static final String BYTES = """
            return [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]
              .reduce((sum, entry) => sum + entry.transferSize, 0);
            """;

    private static final byte[] HEADING =
            "<!doctype html><title>Heading</title><h1>Heading</h1>".getBytes(StandardCharsets.UTF_8);

    private static final Duration REST = Duration.ofSeconds(1);

    private PageFigures() {}

    /**
     * Measures and prints.
     *
     * @param args how many rounds
     */
    public static void main(String[] args) throws IOException {
        int rounds = args.length > 0 ? Integer.parseInt(args[0]) : 15;
        Path folder = Files.createTempDirectory("lampwright-page");
        HttpServer heading = serveHeading();
        try (PageBench bench = new PageBench(folder)) {
            measure(bench, "http://127.0.0.1:" + heading.getAddress().getPort() + "/", rounds);
        } finally {
            heading.stop(0);
            Folders.delete(folder);
        }
    }

    private static HttpServer serveHeading() throws IOException {
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> {
            exchange.getResponseHeaders().set("Content-Type", "text/html; charset=utf-8");
            exchange.getResponseHeaders().set("Cross-Origin-Opener-Policy", "same-origin");
            exchange.sendResponseHeaders(200, HEADING.length);
            try (OutputStream body = exchange.getResponseBody()) {
                body.write(HEADING);
            }
        });
        server.start();
        return server;
    }

    private static void measure(PageBench bench, String heading, int rounds) {
        Browser browser = bench.browser();
        List<double[]> empty = new ArrayList<>();
        List<double[]> filled = new ArrayList<>();
        List<double[]> least = new ArrayList<>();
        for (int i = 0; i < rounds; i++) {
            least.add(openHeading(browser, heading));
            browser.forgetFiles();
            empty.add(openPage(bench));
            openHeading(browser, heading);
            filled.add(openPage(bench));
        }
        print("empty cache", empty);
        print("filled cache", filled);
        print("a page of one heading", least);
    }

    private static double[] openHeading(Browser browser, String heading) {
        browser.open(heading);
        Await.until("the heading is painted", () -> number(browser.run(FIRST_PAINT)) >= 0);
        return rest(browser);
    }

    private static double[] openPage(PageBench bench) {
        bench.open();
        return rest(bench.browser());
    }

    /** What was measured, after the browser has ended what was behind the page before: that would take its time from the next one. */
    private static double[] rest(Browser browser) {
        LockSupport.parkNanos(REST.toNanos());
        return figures(browser);
    }

    private static double[] figures(Browser browser) {
        return new double[] {number(browser.run(FIRST_PAINT)), number(browser.run(BYTES))};
    }

    private static double number(Object value) {
        return ((Number) value).doubleValue();
    }

    private static void print(String when, List<double[]> all) {
        double[] paints = all.stream().mapToDouble(each -> each[0]).sorted().toArray();
        double bytes = all.stream().mapToDouble(each -> each[1]).max().orElse(0);
        System.out.printf(
                Locale.ROOT,
                "%s: first paint %.0f ms (median of %d; least %.0f, most %.0f), %.1f kB sent%n",
                when,
                paints[paints.length / 2],
                paints.length,
                paints[0],
                paints[paints.length - 1],
                bytes / 1000);
    }
}
