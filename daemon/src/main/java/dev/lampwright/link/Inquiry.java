package dev.lampwright.link;

import dev.lampwright.protocol.Here;
import java.util.function.LongSupplier;

/** Identifies a controller once, and lights nothing. */
public final class Inquiry {
    private Inquiry() {}

    /**
     * Opens a line, identifies the controller, and closes the line. Takes up to five seconds.
     *
     * @param line the line
     * @param nanoClock a monotonic clock in ns
     * @return what the controller reports about itself
     * @throws LineException if the line cannot be opened, nobody answers, or another version is used; the message says what to do
     */
    public static Here of(Line line, LongSupplier nanoClock) throws LineException {
        Exchange exchange = new Exchange(line, nanoClock, new Tally(), new Deliveries());
        try {
            line.open();
            return new Asking(exchange, nanoClock, () -> false).whoIsThere();
        } catch (UnfitException e) {
            throw new LineException(line.name() + ": " + e.getMessage());
        } finally {
            line.close();
        }
    }
}
