package dev.lampwright.desk;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What can be asked for. The word for each is the last level of its topic. */
public enum Ask {
    /** How bright the strip is: a share of the light that looks ask for. */
    BRIGHTNESS("level"),
    /** The level of the white lights, or of one. */
    WORK("level"),
    /** A look, for a time. */
    LOOK("look"),
    /** Single pixels and zones in colours of their own, for a time. */
    PIXELS("pixels"),
    /** That somebody has seen the fault. */
    ACKNOWLEDGE("acknowledge"),
    /** That what was acknowledged and is over is to go. */
    RESET("reset"),
    /** The quiet of the night, at once or not at all. */
    QUIET("quiet");

    private final String mainKey;

    Ask(String mainKey) {
        this.mainKey = mainKey;
    }

    /**
     * The word for this.
     *
     * @return for instance {@code brightness}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * What a bare value stands for.
     *
     * @return a key of the request
     */
    public String mainKey() {
        return mainKey;
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
