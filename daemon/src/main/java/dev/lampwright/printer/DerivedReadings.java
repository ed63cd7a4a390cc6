package dev.lampwright.printer;

import dev.lampwright.payload.Quantity;

/**
 * Progress of a printer that does not report it, derived from what it does report: layers (or whatever else is counted) done of all; or
 * else elapsed time of elapsed and remaining time. Unknown stays unknown.
 */
final class DerivedReadings {
    private final boolean progressIsTold;

    /**
     * Prepares.
     *
     * @param bindings what the printer reports
     */
    DerivedReadings(Bindings bindings) {
        progressIsTold = bindings.readings().containsKey(Quantity.JOB_PROGRESS);
    }

    /**
     * Adds what can be derived.
     *
     * @param before the status up to now
     * @param after the status with a message in it
     * @param atNanos when the message came
     * @return {@code after}, with progress if one of its parts is new
     */
    PrinterStatus in(PrinterStatus before, PrinterStatus after, long atNanos) {
        if (progressIsTold) {
            return after;
        }
        boolean counted = after.reading(Quantity.JOB_TOTAL).known();
        boolean news = counted
                ? isNew(before, after, Quantity.JOB_DONE) || isNew(before, after, Quantity.JOB_TOTAL)
                : isNew(before, after, Quantity.JOB_ELAPSED) || isNew(before, after, Quantity.JOB_LEFT);
        return news
                ? after.withReading(Quantity.JOB_PROGRESS, counted ? byCount(after) : byTime(after), atNanos)
                : after;
    }

    private static boolean isNew(PrinterStatus before, PrinterStatus after, Quantity quantity) {
        return after.reading(quantity).differsFrom(before.reading(quantity));
    }

    private static double byCount(PrinterStatus status) {
        return share(status.value(Quantity.JOB_DONE), status.value(Quantity.JOB_TOTAL));
    }

    private static double byTime(PrinterStatus status) {
        double elapsed = status.value(Quantity.JOB_ELAPSED);
        return share(elapsed, elapsed + status.value(Quantity.JOB_LEFT));
    }

    private static double share(double part, double whole) {
        return whole > 0 ? Math.min(1, part / whole) : Double.NaN;
    }
}
