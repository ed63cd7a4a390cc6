package dev.lampwright.payload;

/** The plausible range of a printer's quantity; anything else is a broken sensor or a wrong binding. Common practice, no source. */
public final class Plausible {
    private static final double COLDEST_C = -50;
    private static final double HOTTEST_C = 600;
    /** A year of 365 days. */
    private static final double LONGEST_S = 365 * 86_400;

    private static final double PROGRESS_TOLERANCE = 0.01;
    private static final double WHOLE_PERCENT = 100;

    private Plausible() {}

    /**
     * Accepts a plausible value in the unit of the quantity.
     *
     * @param quantity the quantity of the value
     * @param value in the unit of the quantity
     * @return the value; progress is clamped to 0 to 1
     * @throws UnreadableException if it is not plausible
     */
    public static double value(Quantity quantity, double value) throws UnreadableException {
        if (!isPlausible(quantity, value)) {
            throw new UnreadableException(outside(quantity, Unit.OWN));
        }
        return quantity == Quantity.JOB_PROGRESS ? Math.max(0, Math.min(1, value)) : value;
    }

    /**
     * Accepts a plausible value in another unit.
     *
     * @param quantity the quantity of the value
     * @param unit a unit of the quantity
     * @param told in that unit
     * @return the value in the unit of the quantity; progress is clamped to 0 to 1
     * @throws UnreadableException if it is not plausible; the message has the range in the unit in which the value was reported
     */
    public static double value(Quantity quantity, Unit unit, double told) throws UnreadableException {
        double value = unit.toOwn(told);
        if (!isPlausible(quantity, value)) {
            throw new UnreadableException(outside(quantity, unit) + advice(quantity, unit, told));
        }
        return value(quantity, value);
    }

    private static boolean isPlausible(Quantity quantity, double value) {
        return switch (quantity) {
            case JOB_PROGRESS -> value >= -PROGRESS_TOLERANCE && value <= 1 + PROGRESS_TOLERANCE;
            case JOB_LEFT, JOB_ELAPSED -> value >= 0 && value <= LONGEST_S;
            case JOB_DONE, JOB_TOTAL -> value >= 0 && value <= Double.MAX_VALUE;
            default -> value >= COLDEST_C && value <= HOTTEST_C;
        };
    }

    private static String outside(Quantity quantity, Unit unit) {
        return "the value is out of range, which is "
                + switch (quantity) {
                    case JOB_PROGRESS -> range(0, 1, unit, "");
                    case JOB_LEFT, JOB_ELAPSED -> "0 to " + Math.round(LONGEST_S) + " s";
                    case JOB_DONE, JOB_TOTAL -> "0 and more";
                    default -> range(COLDEST_C, HOTTEST_C, unit, "°C");
                };
    }

    private static String range(double least, double most, Unit unit, String ownWord) {
        String word = unit == Unit.OWN || unit == Unit.SHARE ? ownWord : unit.word();
        return (Math.round(unit.fromOwn(least)) + " to " + Math.round(unit.fromOwn(most)) + " " + word).strip();
    }

    private static String advice(Quantity quantity, Unit unit, double told) {
        boolean percent = quantity == Quantity.JOB_PROGRESS && unit == Unit.OWN && told > 0 && told <= WHOLE_PERCENT;
        return percent ? "; if it is in percent, set unit = \"" + Unit.PERCENT.word() + "\"" : "";
    }
}
