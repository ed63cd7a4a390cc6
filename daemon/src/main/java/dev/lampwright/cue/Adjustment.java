package dev.lampwright.cue;

import dev.lampwright.look.Canvas;

/**
 * Lays what people ask for over the light of the looks: pixels of their own, levels of white lights, brightness, the quiet of the
 * night. What is asked for is taken up within half a second; pixels change in one frame. While an alarm is on, pixels of their own are
 * not shown, the night does not dim the strip, and brightness is never below a quarter. Allocates nothing once made; for one thread.
 */
public final class Adjustment {
    /** Share of its light that a strip has at the least while an alarm is on. */
    static final float LEAST_IN_ALARM = 0.25f;

    private static final float SHARE_PER_S = 2;
    private static final double SECONDS_PER_NANO = 1e-9;

    private final Canvas shown;
    private final float[] held;
    private final float[] share;
    private float gain = 1;
    private float quiet = 1;
    private long last;
    private boolean started;
    private boolean isSettled;

    /**
     * Makes an adjustment that changes nothing yet.
     *
     * @param shown the canvas that adjusted light is drawn on
     */
    public Adjustment(Canvas shown) {
        this.shown = shown;
        held = new float[shown.dimmers().length];
        share = new float[held.length];
    }

    /**
     * Goes on where another adjustment stands.
     *
     * @param before the one that was used up to now
     */
    public void takeOver(Adjustment before) {
        gain = before.gain;
        quiet = before.quiet;
        last = before.last;
        started = before.started;
        if (held.length == before.held.length) {
            System.arraycopy(before.held, 0, held, 0, held.length);
            System.arraycopy(before.share, 0, share, 0, share.length);
        }
    }

    /**
     * Adjusts a frame.
     *
     * @param light the light of the looks, which stays as it is
     * @param situation what is going on
     * @return the light to show: a canvas of the same size
     */
    public Canvas adjust(Canvas light, Situation situation) {
        isSettled = true;
        Wishes wishes = situation.wishes();
        boolean alarm = situation.alarm() != AlarmState.NORMAL;
        float most = step(situation.nanos());
        quiet = toward(quiet, wishes.quiet(), most);
        float wanted = alarm ? Math.max(LEAST_IN_ALARM, wishes.brightness()) : wishes.brightness() * wishes.quiet();
        gain = alarm && wanted > gain ? wanted : toward(gain, wanted, most);
        shown.copyFrom(light);
        if (!alarm) {
            layPixels(wishes.pixelsAt(situation.nanos()), shown.rgba());
        }
        scale(shown.rgba());
        setLevels(wishes, shown.dimmers(), most);
        return shown;
    }

    /**
     * Whether all that is asked for was taken up in the last frame.
     *
     * @return false while light still goes there
     */
    public boolean isSettled() {
        return isSettled;
    }

    /**
     * Lets time pass while the light and what is asked for stay as they are.
     *
     * @param nanos the time
     */
    public void pass(long nanos) {
        last = nanos;
    }

    /** How much a share may change in this frame. The first takes up all at once: nothing has been seen yet. */
    private float step(long nanos) {
        float most = started ? (float) ((nanos - last) * SECONDS_PER_NANO) * SHARE_PER_S : 1;
        started = true;
        last = nanos;
        return most;
    }

    private float toward(float from, float to, float most) {
        float next = from + Math.max(-most, Math.min(most, to - from));
        isSettled &= next == to;
        return next;
    }

    private static void layPixels(float[] own, float[] rgba) {
        if (own.length != rgba.length) {
            return;
        }
        for (int i = 0; i < own.length; i += 4) {
            if (!Float.isNaN(own[i])) {
                System.arraycopy(own, i, rgba, i, 4);
            }
        }
    }

    private void scale(float[] rgba) {
        if (gain == 1) {
            return;
        }
        for (int i = 0; i < rgba.length; i++) {
            rgba[i] *= gain;
        }
    }

    private void setLevels(Wishes wishes, float[] dimmers, float most) {
        for (int i = 0; i < dimmers.length; i++) {
            float wanted = wishes.level(i);
            boolean own = !Float.isNaN(wanted);
            if (own) {
                held[i] = share[i] == 0 ? wanted : toward(held[i], wanted, most);
            }
            share[i] = toward(share[i], own ? 1 : 0, most);
            dimmers[i] = (dimmers[i] + (held[i] - dimmers[i]) * share[i]) * quiet;
        }
    }
}
