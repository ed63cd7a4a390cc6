package dev.lampwright.endtoend;

import dev.lampwright.testing.Browser;
import dev.lampwright.testing.Folders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Opens the live page in a real browser and prints how long it takes, and how much is sent; not a test. The daemon runs as a separate
 * process with a strip of 30 pixels, all on loopback. First the browser has nothing of the page (its cache is cleared each time), then it
 * has it cached. Run it after {@code mvn package}, on a quiet machine, with the number of repetitions, 15 by default:
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

    private PageFigures() {}

    /**
     * Measures and prints.
     *
     * @param args how often
     */
    public static void main(String[] args) throws IOException {
        int times = args.length > 0 ? Integer.parseInt(args[0]) : 15;
        Path folder = Files.createTempDirectory("lampwright-page");
        try (PageBench bench = new PageBench(folder)) {
            print("empty cache", measure(bench, times, true));
            print("filled cache", measure(bench, times, false));
        } finally {
            Folders.delete(folder);
        }
    }

    private static List<double[]> measure(PageBench bench, int times, boolean afresh) {
        Browser browser = bench.browser();
        List<double[]> all = new ArrayList<>();
        for (int i = 0; i < times; i++) {
            browser.open("about:blank");
            if (afresh) {
                browser.forgetFiles();
            }
            bench.open();
            all.add(new double[] {number(browser.run(FIRST_PAINT)), number(browser.run(BYTES))});
        }
        return all;
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
