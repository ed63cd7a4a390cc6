package dev.lampwright.cue;

/**
 * A share that goes evenly from where it is to where it is wanted. A want that changes on the way is gone to from there, in the time that
 * the new one gives. For one thread; allocates nothing.
 */
final class Fader {
    /** How fast a share goes that nobody gave a time for. Our own choice: from dark to full in half a second. */
    static final float USUAL_SHARE_PER_S = 2;

    private float from;
    private float wanted;
    private float value;
    /** How long it is on its way, and how long that takes, in s. */
    private double gone;

    private double whole;

    /** Stands at a share. */
    Fader(float value) {
        jumpTo(value);
    }

    /**
     * Goes on by a frame.
     *
     * @param newWanted where to go
     * @param fadeSeconds how long that takes if it is new, NaN for as long as usual
     * @param seconds since the frame before; infinite to be there at once
     * @return where it is now
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

    /** Stands where it is to be from now on. */
    final void jumpTo(float share) {
        from = share;
        wanted = share;
        value = share;
    }

    /** Whether it is where it is wanted. */
    boolean isSettled() {
        return value == wanted;
    }

    /** Where it is. */
    float value() {
        return value;
    }

    /** Goes on where another one stands. */
    void takeOver(Fader before) {
        from = before.from;
        wanted = before.wanted;
        value = before.value;
        gone = before.gone;
        whole = before.whole;
    }
}
