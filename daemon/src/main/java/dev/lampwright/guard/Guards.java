package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;

/**
 * Both guards in their order. First the ceiling, so that everything that the flash guard sees is under it, and flashes caused by dimming
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
     * Creates the guards.
     *
     * @param setup what is fitted to the controller, and the ceilings
     * @param fitting what looks are made for, on the same strip and dimmers
     * @param settings the user's settings
     * @param framesPerSecond the maximum frames per second, 1 or more
     * @throws IllegalArgumentException if the rate or the user's rise time is out of its range
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
     * Continues from what other guards have seen: seamlessly if the ceilings and what is judged are the same; from the light of the last
     * second if the same lights are grouped differently. Compares values stored at construction, because the frame loop compares no
     * records.
     *
     * @param before the previous guards
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
     * Sets how late light usually is. The last second is extended by that.
     *
     * @param nanos the longest time from a frame's own time until it is seen, 0 or more
     */
    public void expectLate(long nanos) {
        flash.expectLate(nanos);
    }

    /**
     * Sets how late light has been recently. This applies for two seconds.
     *
     * @param nanos as for {@link #expectLate}; anything up to that changes nothing
     */
    public void wereLate(long nanos) {
        flash.wereLate(nanos);
    }

    /** Notes that the controller may have gone dark and come back by itself since the last frame. */
    public void relit() {
        flash.relit();
    }

    /**
     * Applies both limits to a frame. After a gap as long as the holdover, the controller has shown something by itself.
     *
     * @param frame the frame about to be sent
     * @param nanos its time, later than that of the previous frame
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
     * Lets the last frame be sent again, if the guards would not change it.
     *
     * @param nanos its time, later than that of the previous frame
     * @return false if {@link #hold} must be called with the wanted light; nothing has changed then
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
     * What the last frame draws from a supply.
     *
     * @param supply its index
     * @return mA, rounded up
     */
    public int milliamps(int supply) {
        return current.milliamps(supply);
    }

    /**
     * Current that the last frame draws from the strip's supply.
     *
     * @return mA, rounded up
     */
    public int stripMilliamps() {
        return current.milliamps(stripSupply);
    }

    /**
     * The ceiling of the strip's supply.
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
     * How many frames were sent darker than requested because of a ceiling.
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
