package dev.lampwright.look;

import dev.lampwright.signal.Signals;

/**
 * How a pattern moves along a zone.
 *
 * @param speed how fast; negative towards the beginning of the zone
 * @param unit the unit of the speed
 * @param backAndForth whether it turns at the ends, rather than leaving at one and re-entering at the other
 */
public record Motion(double speed, Unit unit, boolean backAndForth) {
    /** No movement. */
    public static final Motion STILL = new Motion(0, Unit.PIXELS_A_SECOND);

    /** The unit of a speed. */
    public enum Unit {
        /** Pixels per second. */
        PIXELS_A_SECOND,
        /** Zone lengths per second. */
        ZONES_A_SECOND
    }

    /**
     * A motion that wraps around.
     *
     * @param speed how fast; negative towards the beginning of the zone
     * @param unit the unit of the speed
     */
    public Motion(double speed, Unit unit) {
        this(speed, unit, false);
    }

    /**
     * Once along the zone in a given time.
     *
     * @param seconds duration of a cycle; negative towards the beginning of the zone
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
     * @param seconds since the look started
     * @param pixels length of the zone
     * @return pixels; negative towards the beginning of the zone
     */
    double travelled(double seconds, int pixels) {
        return speed * seconds * (unit == Unit.PIXELS_A_SECOND ? 1 : pixels);
    }

    /**
     * Where a pattern that turns at the ends is on its way: at 0 when its look starts, at the length of the way when it turns, at 0 again
     * after twice that. If the speed is in zones, one cycle is the way.
     *
     * @param seconds since the look started
     * @param way length of the way, in pixels, 0 or more
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
