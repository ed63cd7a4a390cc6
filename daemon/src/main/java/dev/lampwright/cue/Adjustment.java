package dev.lampwright.cue;

import dev.lampwright.look.Canvas;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Lays what people ask for over the light of the looks: pixels of their own, levels of white lights, brightness, the quiet of the
 * night. What is asked for is taken up within half a second, and pixels change in one frame, unless a wish says how long that takes. While
 * an alarm is on, pixels of their own are not shown, the night does not dim the strip, and brightness is never below a quarter. Allocates
 * nothing once made; for one thread.
 */
public final class Adjustment {
    /** Share of its light that a strip has at the least while an alarm is on. */
    static final float LEAST_IN_ALARM = 0.25f;

    private static final double SECONDS_PER_NANO = 1e-9;

    private final Canvas shown;
    private final OwnPixels pixels;
    private final OwnLevel[] levels;
    private final Fader brightness = new Fader(1);
    private final Fader quiet = new Fader(1);
    /** What the strip is dimmed by: brightness and night, but for an alarm and what it takes to return from one. */
    private float gain = 1;

    private boolean returning;
    private long last;
    private boolean started;
    private boolean isDimmed;
    private boolean isSettled;

    /**
     * Makes an adjustment that changes nothing yet.
     *
     * @param shown the canvas that adjusted light is drawn on
     */
    public Adjustment(Canvas shown) {
        this(shown, IntStream.range(0, shown.rgba().length / 4).toArray(), shown.rgba().length / 4);
    }

    /**
     * Makes an adjustment of a part of a strip that changes nothing yet.
     *
     * @param shown the canvas that adjusted light is drawn on
     * @param places for each of its pixels, its place on the whole canvas
     * @param whole pixels of the whole canvas
     */
    public Adjustment(Canvas shown, int[] places, int whole) {
        this.shown = shown;
        pixels = new OwnPixels(places, whole);
        levels = Stream.generate(OwnLevel::new).limit(shown.dimmers().length).toArray(OwnLevel[]::new);
    }

    /** The level of a white light, of which the look's own is left the less the more it is somebody's. */
    private static final class OwnLevel {
        private final Fader level = new Fader(0);
        private final Fader share = new Fader(0);

        float over(float looks, float wanted, float fadeSeconds, float seconds) {
            boolean own = !Float.isNaN(wanted);
            if (own && share.value() == 0) {
                level.jumpTo(wanted);
            }
            float held = level.follow(own ? wanted : level.value(), fadeSeconds, seconds);
            return looks + (held - looks) * share.follow(own ? 1 : 0, fadeSeconds, seconds);
        }

        boolean isSettled() {
            return level.isSettled() && share.isSettled();
        }

        void takeOver(OwnLevel before) {
            level.takeOver(before.level);
            share.takeOver(before.share);
        }
    }

    /**
     * Goes on where another adjustment stands.
     *
     * @param before the one that was used up to now
     */
    public void takeOver(Adjustment before) {
        brightness.takeOver(before.brightness);
        quiet.takeOver(before.quiet);
        gain = before.gain;
        returning = before.returning;
        last = before.last;
        started = before.started;
        pixels.takeOver(before.pixels);
        if (levels.length == before.levels.length) {
            for (int i = 0; i < levels.length; i++) {
                levels[i].takeOver(before.levels[i]);
            }
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
        Wishes wishes = situation.wishes();
        boolean alarm = situation.alarm() != AlarmState.NORMAL;
        float seconds = step(situation.nanos());
        float bright = brightness.follow(wishes.brightness(), wishes.fade(Wish.BRIGHTNESS_FADE), seconds);
        float night = quiet.follow(wishes.quiet(), wishes.fade(Wish.QUIET_FADE), seconds);
        dim(alarm, alarm ? Math.max(LEAST_IN_ALARM, wishes.brightness()) : bright * night, seconds);
        shown.copyFrom(light);
        pixels.follow(wishes.pixelsAt(situation.nanos()), wishes.fade(Wish.PIXELS_FADE), seconds);
        if (!alarm) {
            pixels.layOver(shown.rgba());
        }
        scale(shown.rgba());
        isSettled = brightness.isSettled() && quiet.isSettled() && pixels.isSettled() && isDimmed;
        setLevels(wishes, shown.dimmers(), night, seconds);
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

    /** Seconds since the frame before. The first takes up all at once: nothing has been seen yet. */
    private float step(long nanos) {
        float seconds = started ? (float) ((nanos - last) * SECONDS_PER_NANO) : Float.POSITIVE_INFINITY;
        started = true;
        last = nanos;
        return seconds;
    }

    /** An alarm is lit at once. What it was brighter than wanted goes within half a second of its end. */
    private void dim(boolean alarm, float wanted, float seconds) {
        returning |= alarm;
        if (!returning || (alarm && wanted > gain)) {
            gain = wanted;
        } else {
            float most = Fader.USUAL_SHARE_PER_S * seconds;
            gain += Math.max(-most, Math.min(most, wanted - gain));
            returning = alarm || gain != wanted;
        }
        isDimmed = gain == wanted;
    }

    private void scale(float[] rgba) {
        if (gain == 1) {
            return;
        }
        for (int i = 0; i < rgba.length; i++) {
            rgba[i] *= gain;
        }
    }

    private void setLevels(Wishes wishes, float[] dimmers, float night, float seconds) {
        for (int i = 0; i < dimmers.length; i++) {
            float fade = wishes.fade(Wish.LEVELS_FADE, i);
            dimmers[i] = levels[i].over(dimmers[i], wishes.level(i), fade, seconds) * night;
            isSettled &= levels[i].isSettled();
        }
    }
}
