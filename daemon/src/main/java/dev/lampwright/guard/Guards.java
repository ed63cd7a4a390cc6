package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;

/**
 * Both guards in their order. First the ceiling, so that all that the flash guard is shown is under it, and flashes of the dimming itself
 * are judged as well; then the flash guard, which sends nothing that the ceiling does not allow. Allocates nothing.
 */
public final class Guards {
    private static final long NANOS_PER_MILLI = 1_000_000;

    private final boolean allowFlashing;
    private final String lights;
    private final String judged;
    private final String choices;
    private final int stripSupply;
    private final int stripCeilingMilliamps;
    private final long holdoverNanos;
    private CurrentGuard current;
    private FlashGuard flash;
    private long last;
    private boolean begun;

    /**
     * Makes the guards.
     *
     * @param setup what is fitted to the controller, and the ceilings
     * @param fitting what looks are made for, on the same strip and dimmers
     * @param settings what the user chose
     * @param framesPerSecond the most frames in a second, 1 or more
     * @throws IllegalArgumentException if the rate or the user's time of rise is out of its range
     */
    public Guards(Setup setup, Fitting fitting, GuardSettings settings, int framesPerSecond) {
        allowFlashing = settings.allowFlashing();
        lights = framesPerSecond + " a second, " + setup.order() + ", " + setup.pixels() + ", " + fitting.dimmers();
        judged = setup + ", " + fitting;
        choices = settings.toString();
        stripSupply = setup.stripSupply();
        holdoverNanos = setup.holdoverMillis() * NANOS_PER_MILLI;
        stripCeilingMilliamps = setup.ceilingsMilliamps().get(stripSupply);
        Ranks ranks = Ranks.of(fitting, settings.dimOrder());
        current = new CurrentGuard(setup, ranks, framesPerSecond, settings.riseSeconds());
        flash = new FlashGuard(setup, fitting, settings.volts(), framesPerSecond);
    }

    /**
     * Goes on from what other guards have seen: where the ceilings and what is judged are the same, without any difference; where the same
     * lights are grouped in another way, from the light of the last second. Compares what was written down when they were made, as the
     * frame loop compares no records.
     *
     * @param before the guards up to now
     * @return whether the light of the last second is known; if not, another second must pass before the first frame
     */
    public boolean takeOver(Guards before) {
        boolean sameLights = lights.equals(before.lights);
        boolean same = sameLights && judged.equals(before.judged) && choices.equals(before.choices);
        if (same) {
            current = before.current;
        }
        boolean known = sameLights && !before.allowFlashing;
        if (same && known) {
            flash = before.flash;
        } else if (known) {
            flash.takeOver(before.flash);
        }
        return known || allowFlashing;
    }

    /**
     * How late light usually is. The last second is longer by that.
     *
     * @param nanos the longest time from a frame's own time until it is seen, 0 or more
     */
    public void expectLate(long nanos) {
        flash.expectLate(nanos);
    }

    /**
     * How late light has been recently. It counts for two seconds.
     *
     * @param nanos as for {@link #expectLate}; what is not longer than that changes nothing
     */
    public void wereLate(long nanos) {
        flash.wereLate(nanos);
    }

    /** Notes that the controller may have gone dark and come back by itself since the last frame. */
    public void relit() {
        flash.relit();
    }

    /**
     * Makes a frame lawful. After a gap as long as the holdover the controller has shown something by itself.
     *
     * @param frame the frame about to leave
     * @param nanos its time, later than that of the frame before
     */
    public void hold(Frame frame, long nanos) {
        current.hold(frame);
        moveTo(nanos);
        if (!allowFlashing) {
            if (flash.hold(frame, nanos, current)) {
                current.weigh(frame);
            }
        }
    }

    /**
     * Lets the last frame leave once more, if the guards would change nothing about it.
     *
     * @param nanos its time, later than that of the frame before
     * @return false if it has to be held again, with the light that is wanted; nothing has happened then
     */
    public boolean pass(long nanos) {
        if (!begun || !current.isSteady() || !(allowFlashing || flash.isFree())) {
            return false;
        }
        current.pass();
        moveTo(nanos);
        if (!allowFlashing) {
            flash.pass(nanos);
        }
        return true;
    }

    private void moveTo(long nanos) {
        if (begun && nanos - last >= holdoverNanos) {
            flash.relit();
        }
        begun = true;
        last = nanos;
    }

    /**
     * What the last frame takes from a supply.
     *
     * @param supply its index
     * @return mA, rounded up
     */
    public int milliamps(int supply) {
        return current.milliamps(supply);
    }

    /**
     * Current that the last frame takes from the strip's supply.
     *
     * @return mA, rounded up
     */
    public int stripMilliamps() {
        return current.milliamps(stripSupply);
    }

    /**
     * The most that the strip's supply may be asked for.
     *
     * @return mA
     */
    public int stripCeilingMilliamps() {
        return stripCeilingMilliamps;
    }

    /**
     * By how much the dark strip alone is over the ceiling. While it is, everything on its supply stays dark.
     *
     * @return mA, rounded up; 0 if it is within
     */
    public int darkOverMilliamps() {
        return current.darkOverMilliamps();
    }

    /**
     * How many frames left darker than they were asked for, because of a ceiling.
     *
     * @return frames since the start
     */
    public long dimmedFrames() {
        return current.dimmedFrames();
    }

    /**
     * How many frames were held back because they would have flashed too often.
     *
     * @return frames since the start
     */
    public long heldFrames() {
        return flash.heldFrames();
    }
}
