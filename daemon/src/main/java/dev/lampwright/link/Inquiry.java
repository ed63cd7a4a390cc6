package dev.lampwright.link;

import dev.lampwright.protocol.Here;
import java.util.function.LongSupplier;

/** Asks a controller once who it is, and lights nothing. */
public final class Inquiry {
    private Inquiry() {}

    /**
     * Opens a line, asks who is there, and closes it again. It takes up to five seconds.
     *
     * @param line the line
     * @param nanoClock a clock in ns that never goes back
     * @return what the controller says of itself
     * @throws LineException if the line cannot be opened, nobody answers, or another version is spoken; the text says what to do
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
