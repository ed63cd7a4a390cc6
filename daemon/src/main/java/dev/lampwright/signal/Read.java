package dev.lampwright.signal;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Reading;

/** A reading followed as it is. */
final class Read implements SignalSource {
    private final Quantity quantity;
    private final Glide glide;
    private Reading last = Reading.UNKNOWN;

    Read(Quantity quantity, Glide glide) {
        this.quantity = quantity;
        this.glide = glide;
    }

    @Override
    public void follow(PrinterStatus status) {
        Reading newest = status.reading(quantity);
        if (newest.differsFrom(last)) {
            last = newest;
            glide.to(newest.value(), newest.atNanos());
        }
    }
}
