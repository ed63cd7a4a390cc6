package dev.lampwright.link;

import dev.lampwright.protocol.Here;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/** Asks a controller and waits for what it answers. */
final class Asking {
    private static final long ASK_EVERY = TimeUnit.MILLISECONDS.toNanos(250);
    private static final long ASK_FOR = TimeUnit.SECONDS.toNanos(5);

    private final Exchange exchange;
    private final String port;
    private final LongSupplier clock;
    private final BooleanSupplier closing;

    Asking(Exchange exchange, String port, LongSupplier clock, BooleanSupplier closing) {
        this.exchange = exchange;
        this.port = port;
        this.clock = clock;
        this.closing = closing;
    }

    /**
     * Asks who is there until a controller answers, for up to five seconds: a board may start anew when its port is opened.
     *
     * @return what it says of itself
     * @throws LineException if nobody answers, or the line is gone
     * @throws UnfitException if it refuses, for instance because it speaks another version
     */
    Here whoIsThere() throws LineException, UnfitException {
        exchange.restart();
        long started = clock.getAsLong();
        while (clock.getAsLong() - started < ASK_FOR) {
            exchange.sendHello();
            if (answered(() -> exchange.here().isPresent())) {
                return exchange.here().orElseThrow();
            }
        }
        throw new LineException(
                "no controller answers on " + port
                        + ": check that it is the right port, that the board has the firmware, and that baud is the same on both sides");
    }

    /**
     * Waits for an answer to what was just sent.
     *
     * @param there whether the answer has come
     * @return false if it has not come in time
     * @throws LineException if the line is gone or being closed
     * @throws UnfitException if the controller refuses
     */
    boolean answered(BooleanSupplier there) throws LineException, UnfitException {
        long now = clock.getAsLong();
        long deadline = now + Math.max(ASK_EVERY, exchange.nanosToDeadline());
        for (long left = deadline - now; left > 0 && !there.getAsBoolean(); left = deadline - clock.getAsLong()) {
            if (closing.getAsBoolean()) {
                throw new LineException("the link to " + port + " is being closed");
            }
            exchange.receive(left);
            if (exchange.refusal().isPresent()) {
                throw new UnfitException(exchange.refusal().orElseThrow());
            }
        }
        exchange.expire();
        return there.getAsBoolean();
    }
}
