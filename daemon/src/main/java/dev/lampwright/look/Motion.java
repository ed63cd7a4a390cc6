package dev.lampwright.look;

/**
 * How a pattern moves along a zone.
 *
 * @param speed how fast; negative towards where the zone begins
 * @param unit what the speed counts
 */
public record Motion(double speed, Unit unit) {
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
     * Once along the zone in some time.
     *
     * @param seconds a cycle; negative towards where the zone begins
     * @return the motion
     */
    public static Motion cycle(double seconds) {
        return new Motion(1 / seconds, Unit.ZONES_A_SECOND);
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
}
