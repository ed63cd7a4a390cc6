package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;

/**
 * One known pattern to measure: all pixels show some channels at one level.
 *
 * @param words what it looks like
 * @param letters the channels that are lit
 * @param level 0 to 255
 */
record CurrentPattern(String words, String letters, int level) {
    private static final double FULL = 255;
    private static final List<String> WORDS = List.of("red", "green", "blue", "the white channel");

    /**
     * The patterns for a strip: dark, each channel alone, and red, green and blue together at two levels, so that there are two more
     * readings than unknowns.
     */
    static List<CurrentPattern> all(Setup setup) {
        List<CurrentPattern> patterns = new ArrayList<>();
        patterns.add(new CurrentPattern("all dark", "", 0));
        int one = FittingSetups.level(setup, setup.pixels(), FittingSetups.full());
        for (int i = 0; i < setup.channels(); i++) {
            patterns.add(new CurrentPattern("all " + WORDS.get(i), "RGBW".substring(i, i + 1), one));
        }
        int three = FittingSetups.level(setup, 3 * setup.pixels(), FittingSetups.full());
        patterns.add(new CurrentPattern("red, green and blue together, darker", "RGB", (three + 1) / 2));
        patterns.add(new CurrentPattern("red, green and blue together", "RGB", three));
        return List.copyOf(patterns);
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
