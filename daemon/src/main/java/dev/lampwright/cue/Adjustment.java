package dev.lampwright.cue;

import dev.lampwright.look.Canvas;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Applies what people ask for to the light of the looks: individually set pixels, levels of white lights, brightness, quiet hours. Changes
 * take half a second, and pixels change in one frame, unless a wish says how long that takes. While an alarm is on, individually set pixels
 * are not shown, quiet hours do not dim the strip, and brightness is never below a quarter. Allocates nothing after construction; for one
 * thread.
 */
public final class Adjustment {
    /** The minimum share of a strip's light while an alarm is on. */
    static final float LEAST_IN_ALARM = 0.25f;

    private static final double SECONDS_PER_NANO = 1e-9;

    private final Canvas shown;
    private final OwnPixels pixels;
    private final OwnLevel[] levels;
    private final Fader brightness = new Fader(1);
    private final Fader quiet = new Fader(1);
    /** The dimming of the strip: brightness and quiet hours, except during an alarm and the return from one. */
    private float gain = 1;

    private boolean returning;
    private long last;
    private boolean started;
    private boolean isDimmed;
    private boolean isSettled;

    /**
     * Creates an adjustment that changes nothing yet.
     *
     * @param shown the canvas that adjusted light is drawn on
     */
    public Adjustment(Canvas shown) {
        this(shown, IntStream.range(0, shown.rgba().length / 4).toArray(), shown.rgba().length / 4);
    }

    /**
     * Creates an adjustment for a part of a strip that changes nothing yet.
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

    /** The level of a white light: a mixture of the requested level and the look's own. */
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
     * Continues from where another adjustment is.
     *
     * @param before the previous one
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
     * @param light the light of the looks, which is not changed
     * @param situation the current situation
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
     * Whether the last frame fully reflects what is asked for.
     *
     * @return false while light is still changing
     */
    public boolean isSettled() {
        return isSettled;
    }

    /**
     * Lets time pass while the light and the asks stay the same.
     *
     * @param nanos the time
     */
    public void pass(long nanos) {
        last = nanos;
    }

    /** Seconds since the previous frame. The first frame applies everything at once, because nothing has been shown yet. */
    private float step(long nanos) {
        float seconds = started ? (float) ((nanos - last) * SECONDS_PER_NANO) : Float.POSITIVE_INFINITY;
        started = true;
        last = nanos;
        return seconds;
    }

    /** An alarm is lit at once. Extra brightness during an alarm fades within half a second of its end. */
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
