package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;

/**
 * One known pattern to measure: all pixels show some channels at one level.
 *
 * @param phrase what it looks like
 * @param letters the channels that are lit
 * @param level 0 to 255
 */
record CurrentPattern(Phrase phrase, String letters, int level) {
    private static final double FULL = 255;
    private static final List<Phrase> SINGLE = List.of(
            Phrase.of("pattern_red", "all red"),
            Phrase.of("pattern_green", "all green"),
            Phrase.of("pattern_blue", "all blue"),
            Phrase.of("pattern_white", "all the white channel"));

    /**
     * The patterns for a strip: dark, each channel alone, and red, green and blue together at two levels, so that there are two more
     * readings than unknowns.
     */
    static List<CurrentPattern> all(Setup setup) {
        List<CurrentPattern> patterns = new ArrayList<>();
        patterns.add(new CurrentPattern(Phrase.of("pattern_dark", "all dark"), "", 0));
        int one = FittingSetups.level(setup, setup.pixels(), FittingSetups.full());
        for (int i = 0; i < setup.channels(); i++) {
            patterns.add(new CurrentPattern(SINGLE.get(i), "RGBW".substring(i, i + 1), one));
        }
        int three = FittingSetups.level(setup, 3 * setup.pixels(), FittingSetups.full());
        patterns.add(new CurrentPattern(
                Phrase.of("pattern_three_darker", "red, green and blue together, darker"), "RGB", (three + 1) / 2));
        patterns.add(new CurrentPattern(Phrase.of("pattern_three", "red, green and blue together"), "RGB", three));
        return List.copyOf(patterns);
    }

    /** What it looks like, in English. */
    String words() {
        return phrase.english();
    }

    Scene scene(Setup setup) {
        return Scenes.stretch(setup.order(), level, 0, setup.pixels() - 1, letters);
    }

    /** The factors of the unknowns: 1 for everything that is drawn in the dark, then full channels, in the strip's order. */
    double[] factors(Setup setup) {
        Frame frame = new Frame(setup.stripBytes(), 0);
        scene(setup).draw(0, frame);
        double[] factors = new double[1 + setup.channels()];
        factors[0] = 1;
        for (int i = 0; i < frame.strip().length; i++) {
            factors[1 + i % setup.channels()] += (frame.strip()[i] & 0xFF) / FULL;
        }
        return factors;
    }
}
