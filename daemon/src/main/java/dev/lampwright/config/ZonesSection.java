package dev.lampwright.config;

import dev.lampwright.look.Zone;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** The section {@code [zones]}. */
final class ZonesSection {
    /** The zone that is always the whole strip. */
    static final String STRIP = "strip";

    /** Runs of pixels, by the user's names. */
    static final Section SECTION = Section.of(
            "zones",
            "runs of the strip; pixel 0 is nearest the controller",
            Key.own(
                            "NAME",
                            "`0-9`, backwards `29-20`, every second pixel `0-58 every 2`, joined `0-9 + 20-29`, folded `0-59 mirrored`")
                    .without("`bed` and `nozzle` are halves, `job` is the whole strip")
                    .example("\"0-9\"", "the first and the last pixel"));

    private static final Pattern RUN =
            Pattern.compile("(\\d{1,5})(?:\\s*-\\s*(\\d{1,5})(?:\\s+every\\s+(\\d{1,5}))?)?");
    private static final String MIRRORED = "mirrored";
    private static final String WANTED =
            "give the first and the last pixel, for instance \"0-9\", or \"9-0\" for the other"
                    + " direction, \"0-58 every 2\", \"0-9 + 20-29\" or \"0-59 mirrored\"";

    private ZonesSection() {}

    /**
     * Reads the section.
     *
     * @param table the section
     * @param pixels pixels of the strip, 1 or more
     * @param taken names of zones elsewhere in the file
     * @return the whole strip, the zones of the file, in its order, and those of {@link #usual} that it leaves out; the whole strip also
     *     replaces what is wrong
     */
    static Map<String, Zone> read(Table table, int pixels, Collection<String> taken) {
        Zone strip = Zone.run(0, pixels - 1);
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put(STRIP, strip.named(STRIP));
        for (String name : table.keys()) {
            zones.put(name, zone(table, name, pixels).orElse(strip).named(name));
        }
        usual(pixels).forEach((name, zone) -> {
            if (!table.has(name) && !taken.contains(name)) {
                zones.put(name, table.defaultOf(name, zone.named(name), zone.toString()));
            }
        });
        noteTaken(table, STRIP, "is always the whole strip");
        noteTaken(table, DimmersSection.PLAIN, "is always what plain colour strips there are");
        taken.forEach(name -> noteTaken(table, name, "is the zone of the plain colour strip dimmers." + name));
        return zones;
    }

    private static void noteTaken(Table table, String name, String why) {
        if (table.has(name)) {
            table.mistake(name, why, "choose another name");
        }
    }

    /**
     * The zones that always exist: {@code bed} is the first half of the strip, {@code nozzle} the second half, running backwards from the
     * far end, and {@code job} is the whole strip. A single pixel is all three.
     */
    static Map<String, Zone> usual(int pixels) {
        int half = (pixels + 1) / 2;
        int last = pixels - 1;
        Map<String, Zone> usual = new LinkedHashMap<>();
        usual.put("bed", Zone.run(0, half - 1));
        usual.put("nozzle", Zone.run(last, Math.min(half, last)));
        usual.put("job", Zone.run(0, last));
        return usual;
    }

    /** Some pixels of the strip; empty if left out or wrong. */
    static Optional<Zone> zone(Table table, String key, int pixels) {
        return table.text(key, WANTED).flatMap(text -> zone(table, key, text, pixels));
    }

    private static Optional<Zone> zone(Table table, String name, String text, int pixels) {
        String runs = text.strip();
        boolean mirrored = runs.endsWith(" " + MIRRORED) || runs.endsWith("\t" + MIRRORED);
        String joined = mirrored ? runs.substring(0, runs.length() - MIRRORED.length()) : runs;
        return table.attempt(name, WANTED, () -> {
            Zone zone = Zone.of(pixels(joined, text, pixels));
            return mirrored ? zone.mirrored() : zone;
        });
    }

    private static int[] pixels(String joined, String text, int pixels) {
        IntStream.Builder all = IntStream.builder();
        for (int from = 0; from <= joined.length(); ) {
            int plus = joined.indexOf('+', from);
            int to = plus < 0 ? joined.length() : plus;
            run(joined.substring(from, to).strip(), text, pixels).forEach(all::add);
            from = to + 1;
        }
        return all.build().toArray();
    }

    private static IntStream run(String run, String text, int pixels) {
        Matcher matcher = RUN.matcher(run);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("is " + Wording.quoted(text) + "; " + WANTED);
        }
        int first = Integer.parseInt(matcher.group(1));
        int last = matcher.group(2) == null ? first : Integer.parseInt(matcher.group(2));
        if (Math.max(first, last) >= pixels) {
            throw new IllegalArgumentException("is " + Wording.quoted(text)
                    + ", past the end of the strip; stay within 0-" + (pixels - 1) + ", or correct strip.pixels");
        }
        int step = matcher.group(3) == null ? 1 : step(run, matcher.group(3), Math.abs(last - first));
        int direction = last < first ? -step : step;
        return IntStream.rangeClosed(0, Math.abs(last - first) / step).map(i -> first + direction * i);
    }

    private static int step(String run, String digits, int span) {
        int step = Integer.parseInt(digits);
        if (step < 2 || step > span) {
            throw new IllegalArgumentException(
                    "has " + Wording.quoted(run)
                            + " in it, which leaves out " + (step < 2 ? "nothing" : "all but the first pixel")
                            + "; give a whole number of 2 or more, below the length of the run, for instance \"0-58 every 2\" for every second pixel");
        }
        return step;
    }
}
