package dev.lampwright.config;

import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;

/** The key {@code [strip] outputs}: which data line of the controller carries which pixels. */
final class StripOutputs {
    private static final String WANTED = "give the pixels of each data line, " + Setup.MOST_RUNS
            + " at most, in the order along the strip, for instance [300, 300]";

    /** The key. */
    static final Key<Void> KEY = Key.own("outputs", "up to " + Setup.MOST_RUNS + " whole numbers")
            .without("all pixels are on the first data line")
            .comment("[15, 15]", "pixels of each data line, along the strip; 0 skips one");

    private StripOutputs() {}

    /**
     * Reads the key.
     *
     * @param strip the section
     * @param pixels pixels of the strip
     * @return the runs that the strip is cut into; empty if all of it is on the first data line, or if the key is wrong
     */
    static List<Setup.Run> read(Table strip, int pixels) {
        if (!strip.has(KEY.name())) {
            return List.of();
        }
        List<Double> lengths = strip.numbers(KEY.name(), 0, StripSection.MOST_PIXELS);
        if (strip.right()) {
            noteMismatch(strip, lengths, pixels);
        }
        return strip.right() ? runs(lengths) : List.of();
    }

    private static void noteMismatch(Table strip, List<Double> lengths, int pixels) {
        double sum = lengths.stream().mapToDouble(Double::doubleValue).sum();
        if (lengths.isEmpty()) {
            strip.mistake(KEY.name(), "is empty", WANTED + ", or leave it out");
        } else if (lengths.size() > Setup.MOST_RUNS) {
            String what = "has " + lengths.size() + " data lines, and no controller has more than " + Setup.MOST_RUNS;
            strip.mistake(KEY.name(), what, WANTED);
        } else if (lengths.stream().anyMatch(length -> length != Math.rint(length))) {
            strip.mistake(KEY.name(), "has a number in it that is not whole", WANTED);
        } else if (sum != pixels) {
            String what = "has " + Wording.number(sum) + " pixels together, and the strip has " + pixels;
            strip.mistake(KEY.name(), what, "let them add up to strip.pixels");
        }
    }

    /** A controller with one data line needs no runs, and may not support them. */
    private static List<Setup.Run> runs(List<Double> lengths) {
        List<Setup.Run> runs = new ArrayList<>();
        for (int output = 0; output < lengths.size(); output++) {
            if (lengths.get(output) > 0) {
                runs.add(new Setup.Run(output, lengths.get(output).intValue()));
            }
        }
        boolean whole = runs.size() == 1 && runs.get(0).output() == 0;
        return whole ? List.of() : List.copyOf(runs);
    }
}
