package dev.lampwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The page with motions of light: its pictures, the looks next to them, and the strip that all of them are for. */
public final class MotionsPage {
    private static final Path PAGE = Path.of("doc/motions.md");

    private static final String PICTURE =
            "!\\[[^\\]]+\\]\\(motions/([a-z0-9-]+)\\.gif\\) <!-- ([0-9]+) s(?:, ([0-9]+) a second)? -->";
    private static final Pattern ENTRY = Pattern.compile(PICTURE + "\n\n```toml\n(.*?)```", Pattern.DOTALL);
    private static final Pattern ROW = Pattern.compile("\\| " + PICTURE + " \\| `(rhythm = \"[^\"]+\")` \\|");
    private static final Pattern FILE = Pattern.compile("```toml\n(\\[strip\\].*?)```", Pattern.DOTALL);
    private static final String CONNECTED = """
            broker.url = "mqtt://alder"
            printer.readings.job.progress.topic = "shop/alder/job"
            printer.readings.print_speed = { topic = "shop/alder/job", at = "/speed", unit = "percent", range = [50, 150] }
            printer.state = { topic = "shop/alder/job", fault = ["ALARM"] }
            controller.port = "/dev/ttyACM0"
            supply.ceiling_mA = 2500
            """;

    private MotionsPage() {}

    /**
     * A picture of the page, and the text next to it.
     *
     * @param name of the picture and of the look
     * @param seconds how long the picture is
     * @param rate frames a second
     * @param text the lines of the look
     */
    public record Motion(String name, String seconds, String rate, String text) {
        @Override
        public String toString() {
            return name;
        }
    }

    /** The text of the page. */
    public static String text() {
        try {
            return Files.readString(PAGE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All of them, those with lines of their own first. */
    public static List<Motion> motions() {
        List<Motion> motions = new ArrayList<>();
        Matcher entry = ENTRY.matcher(text());
        while (entry.find()) {
            motions.add(motion(entry, entry.group(4)));
        }
        Matcher row = ROW.matcher(text());
        while (row.find()) {
            String layer = "{ colour = \"gold\", " + row.group(4) + " }";
            motions.add(motion(row, "[looks." + row.group(1) + "]\nlayers = [" + layer + "]\n"));
        }
        return motions;
    }

    private static Motion motion(Matcher found, String text) {
        String rate = found.group(3) == null ? "10" : found.group(3);
        return new Motion(found.group(1), found.group(2), rate, text);
    }

    /** A configuration file with the page's strip and zones, to which looks can be added. */
    public static String file() {
        Matcher file = FILE.matcher(text());
        if (!file.find()) {
            throw new AssertionError(PAGE + " has no lines with the strip");
        }
        return CONNECTED + file.group(1);
    }
}
