package dev.lampwright.look;

import dev.lampwright.signal.Signals;

/**
 * How a pattern moves along a zone.
 *
 * @param speed how fast; negative towards where the zone begins
 * @param unit what the speed counts
 * @param backAndForth whether it turns at the ends, rather than coming in at one when it leaves at the other
 */
public record Motion(double speed, Unit unit, boolean backAndForth) {
    /** No movement. */
    public static final Motion STILL = new Motion(0, Unit.PIXELS_A_SECOND);

    /** What a speed counts. */
    public enum Unit {
        /** Pixels in a second. */
        PIXELS_A_SECOND,
        /** Lengths of the zone in a second. */
        ZONES_A_SECOND
    }

    /**
     * Round and round.
     *
     * @param speed how fast; negative towards where the zone begins
     * @param unit what the speed counts
     */
    public Motion(double speed, Unit unit) {
        this(speed, unit, false);
    }

    /**
     * Once along the zone in some time.
     *
     * @param seconds a cycle; negative towards where the zone begins
     * @return the motion
     */
    public static Motion cycle(double seconds) {
        return new Motion(1 / seconds, Unit.ZONES_A_SECOND);
    }

    /**
     * The same, turning at the ends.
     *
     * @return another motion
     */
    public Motion turning() {
        return new Motion(speed, unit, true);
    }

    /** How long a pattern stays where it is, in ns. */
    long stillFor() {
        return speed == 0 ? Signals.FOREVER : 0;
    }

    /**
     * How far the pattern has moved.
     *
     * @param seconds since the look came on
     * @param pixels length of the zone
     * @return pixels; negative towards where the zone begins
     */
    double travelled(double seconds, int pixels) {
        return speed * seconds * (unit == Unit.PIXELS_A_SECOND ? 1 : pixels);
    }

    /**
     * Where on its way a pattern is that turns at the ends: at 0 when its look comes on, at the length of the way when it turns, at 0 again
     * after twice that. What is measured in zones takes its cycle for the way.
     *
     * @param seconds since the look came on
     * @param way how far there is to go, in pixels, 0 or more
     * @return 0 up to, but not including, twice the way; 0 if there is no way
     */
    double turn(double seconds, double way) {
        if (way <= 0) {
            return 0;
        }
        double moved = Math.abs(speed) * seconds * (unit == Unit.PIXELS_A_SECOND ? 1 : way);
        return moved % (2 * way);
    }
}
