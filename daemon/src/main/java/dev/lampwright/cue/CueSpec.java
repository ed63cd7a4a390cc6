package dev.lampwright.cue;

import dev.lampwright.look.Look;
import dev.lampwright.look.LookSpec;
import java.util.List;

/**
 * Describes a rule that shows a look. Immutable; one description can make any number of cues.
 *
 * @param look what it shows
 * @param conditions all of which must hold; with none the cue always holds
 * @param fadeSeconds how long the fade from the previous look takes, in s; 0 cuts in at once
 * @param easing the curve of the fade
 */
public record CueSpec(LookSpec look, List<Condition> conditions, double fadeSeconds, Easing easing) {
    /**
     * Keeps a copy of the list.
     *
     * @throws IllegalArgumentException if the time of the fade is negative
     */
    public CueSpec {
        if (!(fadeSeconds >= 0)) {
            throw new IllegalArgumentException("a fade of " + fadeSeconds + " s; give 0 or more");
        }
        conditions = List.copyOf(conditions);
    }

    /**
     * A look that is always on.
     *
     * @param look what is shown
     * @return a cue that always holds
     */
    public static CueSpec always(LookSpec look) {
        return new CueSpec(look, List.of(), 0, Easing.LINEAR);
    }

    /**
     * Creates the cue.
     *
     * @param made the look that was made from this one's {@link #look}; cues with the same look share it
     * @return a new one that has never held
     */
    public Cue make(Look made) {
        return new Cue(made, conditions, fadeSeconds, easing);
    }
}
