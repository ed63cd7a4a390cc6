package dev.lampwright.desk;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What can be asked for. The word for each is the last level of its topic, and the key of its value where a message is an object. */
public enum Ask {
    /** How bright the strip is: a share of the light that looks ask for. */
    BRIGHTNESS,
    /** The level of the white lights, or of one. */
    WORK,
    /** A look, for a time. */
    LOOK,
    /** Single pixels and zones in colours of their own, for a time. */
    PIXELS,
    /** That somebody has seen the fault. */
    ACKNOWLEDGE,
    /** That what was acknowledged and is over is to go. */
    RESET,
    /** The quiet of the night, at once or not at all. */
    QUIET;

    /**
     * The word for this.
     *
     * @return for instance {@code brightness}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The words for all.
     *
     * @return as in {@link #word}
     */
    public static List<String> words() {
        return Arrays.stream(values()).map(Ask::word).toList();
    }

    /** The ask of a word; empty if there is none. */
    static Optional<Ask> of(String word) {
        return Arrays.stream(values()).filter(ask -> ask.word().equals(word)).findFirst();
    }
}
