package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A mark on the strip that the user moves to where something is. */
final class PixelMark {
    private static final int LEVEL = 140;
    private static final int MARKS = 2;
    private static final String MARK = "RG";

    private PixelMark() {}

    /**
     * Lets the user move the mark.
     *
     * @param where the destination, with the code of the question
     * @param start its initial position
     * @param other a pixel that is marked in blue at the same time
     * @param before what is known
     * @param bench to show and ask
     * @return the pixel
     */
    static int moved(Phrase where, int start, Optional<Integer> other, Findings before, FittingBench bench)
            throws LeaveException, IOException {
        int pixels = before.knownPixels();
        int at = start;
        while (true) {
            mark(at, other, before, bench);
            int now = at;
            int next = bench.ask(new Question<Integer>(
                            "Pixel " + at + " is marked. Move the mark to " + where.english()
                                    + ": a number, + or -, +10 or -10; Enter when it is there.",
                            "Pixels are numbered from 0, nearest the controller, to " + (pixels - 1)
                                    + ". + moves the mark one pixel away from the controller, +10 ten; - the other way.",
                            line -> next(line, now, pixels))
                    .coded(where.code(), values(where, at))
                    .in(Form.slider(0, pixels - 1, at))
                    .tried(pixel -> mark(pixel, other, before, bench)));
            if (next == at) {
                return at;
            }
            at = next;
        }
    }

    private static Object[] values(Phrase where, int at) {
        List<Object> values = new ArrayList<>(List.of("at", at));
        where.values().forEach((name, value) -> values.addAll(List.of(name, value)));
        return values.toArray();
    }

    private static int next(String line, int from, int pixels) throws Question.UnusableException {
        if (line.isEmpty()) {
            return from;
        }
        char sign = line.charAt(0);
        if (sign != '+' && sign != '-') {
            return TypedNumbers.readWhole(line, 0, pixels - 1);
        }
        boolean signs = line.chars().allMatch(c -> c == sign);
        int far = signs ? line.length() : TypedNumbers.readWhole(line.substring(1), 1, pixels);
        int to = sign == '+' ? from + far : from - far;
        if (to < 0 || to >= pixels) {
            throw new Question.UnusableException(
                    "mark_outside", "the strip goes from 0 to " + (pixels - 1), "last", pixels - 1);
        }
        return to;
    }

    private static void mark(int at, Optional<Integer> other, Findings before, FittingBench bench) {
        Setup setup = FittingSetups.of(before);
        int level = FittingSetups.level(setup, MARKS * MARK.length(), LEVEL);
        Map<Integer, String> marks = new LinkedHashMap<>();
        other.ifPresent(pixel -> marks.put(pixel, "B"));
        marks.put(at, MARK);
        bench.show(setup, Scenes.pixels(before.knownOrder(), level, marks));
    }
}
