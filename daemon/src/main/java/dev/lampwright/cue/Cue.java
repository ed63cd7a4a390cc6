package dev.lampwright.cue;

import dev.lampwright.look.Look;
import dev.lampwright.signal.Signals;
import java.util.List;

/**
 * A rule that shows a look. It holds while all its conditions do, and remembers which of them did. {@link CueSpec} describes one. For one
 * thread, except for {@link #held}.
 */
public final class Cue {
    private final Look look;
    private final List<Condition> conditions;
    private final double fadeSeconds;
    private final Easing easing;
    private final boolean[] held;
    private volatile boolean holds;

    /**
     * Creates a cue.
     *
     * @param look what it shows
     * @param conditions all of which must hold; with none the cue always holds
     * @param fadeSeconds how long the fade from the previous look takes, in s; 0 cuts in at once
     * @param easing the curve of the fade
     */
    public Cue(Look look, List<Condition> conditions, double fadeSeconds, Easing easing) {
        this.look = look;
        this.conditions = List.copyOf(conditions);
        this.fadeSeconds = fadeSeconds;
        this.easing = easing;
        held = new boolean[conditions.size()];
    }

    /**
     * Whether the cue holds. Call this once per frame.
     *
     * @param situation the current situation
     * @return true if all conditions hold
     */
    boolean holds(Situation situation) {
        boolean all = true;
        for (int i = 0; i < held.length; i++) {
            held[i] = conditions.get(i).holds(situation, held[i]);
            all &= held[i];
        }
        holds = all;
        return all;
    }

    /** Whether the cue held in the last frame. Any thread may ask. */
    boolean held() {
        return holds;
    }

    /** How long it holds, or does not, in ns, if nothing new is heard and nobody asks for anything. */
    long stillFor(Situation situation) {
        long still = Signals.FOREVER;
        for (int i = 0; i < held.length && still > 0; i++) {
            still = Math.min(still, conditions.get(i).stillFor(situation));
        }
        return still;
    }

    /**
     * What the cue shows.
     *
     * @return the look
     */
    public Look look() {
        return look;
    }

    /**
     * How long the fade takes.
     *
     * @return s; 0 if it cuts in at once
     */
    double fadeSeconds() {
        return fadeSeconds;
    }

    /**
     * How far a fade has got.
     *
     * @param time share of its time that has passed, 0 to 1
     * @return 0 to 1, the share of this cue's look
     */
    float eased(double time) {
        return (float) easing.at(time);
    }
}
