package dev.lampwright.fuzz;

import java.util.List;
import java.util.Locale;

/** What the printer may be doing, and its colour on the whole strip; each channel is dark or full. */
enum Colour {
    IDLE("READY", 0x00ffff),
    WARMING("PREHEAT", 0xffff00),
    PRINTING("RUN", 0x00ff00),
    HELD("WAIT", 0xff00ff),
    DONE("ENDED", 0xffffff),
    FAULT("ALARM", 0xff0000);

    /** The positions of red, green and blue in the three bytes of a pixel in the order GRB. */
    private static final int[] PLACES = {1, 0, 2};

    private static final int[] MASKS = {0xff0000, 0xff00, 0xff};

    /** Full white demands 1110 mA and gets 600; anything darker than half of that share is not dimmed by the ceiling alone. */
    private static final int LEAST = 60;

    private final String word;
    private final int colour;

    Colour(String word, int colour) {
        this.word = word;
        this.colour = colour;
    }

    /** A state that the printer may report after this one. */
    Colour other() {
        return this == IDLE ? PRINTING : IDLE;
    }

    /** The printer's word for it. */
    String word() {
        return word;
    }

    /** The lines of the configuration for it. */
    String lines() {
        return """
            [looks.%1$s]
            dimmers.work = 0.25
            layers = [{ colour = "#%2$06x" }]
            [[cues]]
            state = "%1$s"
            look = "%1$s"
            fade_s = 0
            """.formatted(key(), colour);
    }

    /** The state's name in a configuration. */
    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether a strip shows this, whether or not dimmed for the ceiling. */
    boolean isOn(List<Integer> strip) {
        int level = strip.stream().mapToInt(Integer::intValue).max().orElse(0);
        boolean is = strip.size() == 3 * House.PIXELS && level >= LEAST;
        for (int i = 0; is && i < strip.size(); i++) {
            int wanted = (colour & MASKS[PLACES[i % 3]]) == 0 ? 0 : level;
            is = Math.abs(strip.get(i) - wanted) <= 1;
        }
        return is;
    }
}
