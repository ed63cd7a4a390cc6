package dev.lampwright.desk;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What can be asked for. The word for each is the last level of its topic. */
public enum Ask {
    /** How bright the strip is: a share of the light that looks ask for. */
    BRIGHTNESS("level", new BrightnessAsk()),
    /** The level of the white lights, or of one. */
    WORK("level", new WorkAsk()),
    /** A look, for a time. */
    LOOK("look", new LookAsk()),
    /** Single pixels and zones in colours of their own, for a time. */
    PIXELS("pixels", new PixelsAsk()),
    /** That somebody has seen the fault. */
    ACKNOWLEDGE("acknowledge", new AcknowledgeAsk()),
    /** That what was acknowledged and is over is to go. */
    RESET("reset", new ResetAsk()),
    /** The quiet of the night, at once or not at all. */
    QUIET("quiet", new QuietAsk());

    private final String mainKey;
    private final Deed deed;

    Ask(String mainKey, Deed deed) {
        this.mainKey = mainKey;
        this.deed = deed;
    }

    /** What is done about it. */
    interface Deed {
        /**
         * Does it, or refuses and changes nothing.
         *
         * @param request what was asked
         * @param circumstances what is fitted and what goes on
         * @param before what was asked for up to now
         * @return what is asked for from now on, and a line that says so
         * @throws RefusedException if it can't be done
         */
        Outcome done(Request request, Circumstances circumstances, Standing before) throws RefusedException;
    }

    /**
     * What came of it.
     *
     * @param standing what is asked for from now on
     * @param text a line that says so
     */
    record Outcome(Standing standing, String text) {}

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

    /** What is done about it. */
    Deed deed() {
        return deed;
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
