package dev.lampwright.config;

import dev.lampwright.look.PixelRun;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The section {@code [zones]}. */
final class ZonesSection {
    private static final Pattern RUN = Pattern.compile("(\\d{1,5})(?:-(\\d{1,5}))?");
    private static final String WANTED =
            "give the first and the last pixel, for instance \"0-9\", or \"9-0\" for the other direction";

    private ZonesSection() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param pixels pixels of the strip, 1 or more
     * @return the zones of the file, in its order, and those of {@link #usual} that it leaves out
     */
    static Map<String, PixelRun> read(Table table, int pixels) {
        Map<String, PixelRun> zones = new LinkedHashMap<>();
        for (String name : table.keys()) {
            table.text(name, WANTED)
                    .flatMap(text -> run(table, name, text, pixels))
                    .ifPresent(run -> zones.put(name, run));
        }
        usual(pixels).forEach((name, run) -> {
            if (!table.has(name)) {
                zones.put(name, table.defaultOf(name, run, shown(run)));
            }
        });
        return zones;
    }

    /**
     * The zones that are always there: {@code bed} is the first half of the strip, {@code nozzle} the second half, running
     * backwards from the far end, and {@code job} is the whole strip. A single pixel is all three.
     */
    private static Map<String, PixelRun> usual(int pixels) {
        int half = (pixels + 1) / 2;
        int last = pixels - 1;
        Map<String, PixelRun> usual = new LinkedHashMap<>();
        usual.put("bed", new PixelRun(0, half - 1));
        usual.put("nozzle", new PixelRun(last, Math.min(half, last)));
        usual.put("job", new PixelRun(0, last));
        return usual;
    }

    /**
     * A run of pixels as it stands in the file.
     *
     * @param run the run
     * @return for instance {@code 29-20}
     */
    static String shown(PixelRun run) {
        return run.first() + "-" + run.last();
    }

    private static Optional<PixelRun> run(Table table, String name, String text, int pixels) {
        Matcher matcher = RUN.matcher(text.strip());
        if (!matcher.matches()) {
            table.mistake(name, "is " + Shown.quoted(text), WANTED);
            return Optional.empty();
        }
        int first = Integer.parseInt(matcher.group(1));
        int last = matcher.group(2) == null ? first : Integer.parseInt(matcher.group(2));
        if (Math.max(first, last) >= pixels) {
            table.mistake(
                    name,
                    "is " + Shown.quoted(text) + ", past the end of the strip",
                    "stay within 0-" + (pixels - 1) + ", or mend strip.pixels");
        }
        return Optional.of(new PixelRun(first, last));
    }
}
