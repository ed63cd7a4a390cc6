package dev.lampwright.cue;

import dev.lampwright.look.Look;
import dev.lampwright.look.LookSpec;
import java.util.List;

/**
 * Describes a rule that puts a look on. Immutable; one description makes as many cues as are asked for.
 *
 * @param look what it puts on
 * @param conditions all of which must hold; with none the cue always holds
 * @param fadeSeconds how long the fade from the look before takes, in s; 0 cuts in at once
 * @param easing how the fade goes
 */
public record CueSpec(LookSpec look, List<Condition> conditions, double fadeSeconds, Easing easing) {
    /**
     * Keeps a copy of the list.
     *
     * @throws IllegalArgumentException if the fade takes less than no time
     */
    public CueSpec {
        if (!(fadeSeconds >= 0)) {
            throw new IllegalArgumentException("a fade of " + fadeSeconds + " s; give 0 or more");
        }
        conditions = List.copyOf(conditions);
    }

    /**
     * A look that is on from the first frame to the last.
     *
     * @param look what is shown
     * @return a cue that always holds
     */
    public static CueSpec always(LookSpec look) {
        return new CueSpec(look, List.of(), 0, Easing.LINEAR);
    }

    /**
     * Makes the cue.
     *
     * @param made the look that was made from this one's {@link #look}; cues with the same look share it
     * @return a new one that has never held
     */
    public Cue make(Look made) {
        return new Cue(made, conditions, fadeSeconds, easing);
    }
}
