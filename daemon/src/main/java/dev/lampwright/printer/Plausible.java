package dev.lampwright.printer;

/** What a quantity of a printer can be; anything else is a broken sensor or a wrong binding. Common practice, no source. */
final class Plausible {
    private static final double COLDEST_C = -50;
    private static final double HOTTEST_C = 600;
    private static final double PROGRESS_TOLERANCE = 0.01;

    private Plausible() {}

    /**
     * Takes a value if it can be true.
     *
     * @param quantity what it is a value of
     * @param value in the unit of the quantity
     * @return the value; progress is held between 0 and 1
     * @throws UnreadableException if it cannot be true
     */
    static double value(Quantity quantity, double value) throws UnreadableException {
        return switch (quantity) {
            case JOB_PROGRESS ->
                Math.max(0, Math.min(1, within(value, -PROGRESS_TOLERANCE, 1 + PROGRESS_TOLERANCE, "0 to 1")));
            case JOB_LEFT, JOB_ELAPSED -> within(value, 0, Double.MAX_VALUE, "0 s and more");
            case JOB_DONE, JOB_TOTAL -> within(value, 0, Double.MAX_VALUE, "0 and more");
            default -> within(value, COLDEST_C, HOTTEST_C, "-50 to 600 °C");
        };
    }

    private static double within(double value, double least, double most, String range) throws UnreadableException {
        if (value >= least && value <= most) {
            return value;
        }
        throw new UnreadableException("the value is out of range, which is " + range);
    }
}
