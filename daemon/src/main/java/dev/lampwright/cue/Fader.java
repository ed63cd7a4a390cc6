package dev.lampwright.cue;

/**
 * A share that moves evenly from its current to its wanted value. If the wanted value changes on the way, it continues from there, in the
 * time given for the new one. For one thread; allocates nothing.
 */
final class Fader {
    /** The speed of a share for which no time is given. Our own choice: from dark to full in half a second. */
    static final float USUAL_SHARE_PER_S = 2;

    private float from;
    private float wanted;
    private float value;
    /** How long it has been moving, and how long that takes in all, in s. */
    private double gone;

    private double whole;

    /** Starts at a share. */
    Fader(float value) {
        jumpTo(value);
    }

    /**
     * Advances by a frame.
     *
     * @param newWanted the wanted value
     * @param fadeSeconds how long that takes if it is new, NaN for the default time
     * @param seconds since the previous frame; infinite to jump there
     * @return the current value
     */
    float follow(float newWanted, float fadeSeconds, float seconds) {
        if (newWanted != wanted) {
            from = value;
            wanted = newWanted;
            gone = 0;
            whole = Float.isNaN(fadeSeconds) ? Math.abs(wanted - from) / USUAL_SHARE_PER_S : fadeSeconds;
        }
        gone += seconds;
        value = gone < whole ? from + (wanted - from) * (float) (gone / whole) : wanted;
        return value;
    }

    /** Jumps to a value. */
    final void jumpTo(float share) {
        from = share;
        wanted = share;
        value = share;
    }

    /** Whether it has reached the wanted value. */
    boolean isSettled() {
        return value == wanted;
    }

    /** Where it is. */
    float value() {
        return value;
    }

    /** Continues from where another one is. */
    void takeOver(Fader before) {
        from = before.from;
        wanted = before.wanted;
        value = before.value;
        gone = before.gone;
        whole = before.whole;
    }
}
