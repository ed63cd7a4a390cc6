package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;

/**
 * How the number of a reading is reported.
 *
 * @param unit the unit; {@link Unit#OWN} if it is the role's own
 * @param scale factor that converts the number to that unit: 0.1 for tenths
 */
record Gauge(Unit unit, double scale) {
    /** The number is used unchanged. */
    static final Gauge PLAIN = new Gauge(Unit.OWN, 1);

    /** A number without a fraction of its unit. */
    static Gauge of(Unit unit) {
        return new Gauge(unit, 1);
    }

    /** Converts a number as reported to the role's own unit. */
    double toOwn(double told) {
        return unit.toOwn(told * scale);
    }
}
