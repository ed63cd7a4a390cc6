package dev.lampwright.link;

import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/** Who is there, and does it take the set-up? */
final class Handshake {
    private static final long ASK_EVERY = TimeUnit.MILLISECONDS.toNanos(250);
    private static final long ASK_FOR = TimeUnit.SECONDS.toNanos(5);
    private static final int SETUP_TRIES = 3;

    private final Exchange exchange;
    private final String port;
    private final Setup setup;
    private final LongSupplier clock;
    private final BooleanSupplier closing;

    Handshake(Exchange exchange, String port, Setup setup, LongSupplier clock, BooleanSupplier closing) {
        this.exchange = exchange;
        this.port = port;
        this.setup = setup;
        this.clock = clock;
        this.closing = closing;
    }

    /**
     * Asks until a controller answers, for up to five seconds: a board may start anew when its port is opened.
     *
     * @return what it says of itself
     * @throws LineException if nobody answers, or the line is gone
     * @throws UnfitException if it cannot do what the set-up asks, or speaks another version
     */
    Here ask() throws LineException, UnfitException {
        exchange.restart();
        long started = clock.getAsLong();
        while (clock.getAsLong() - started < ASK_FOR) {
            exchange.sendHello();
            if (answered(() -> exchange.here().isPresent())) {
                Here here = exchange.here().orElseThrow();
                Fit.check(here, setup);
                return here;
            }
        }
        throw new LineException(
                "no controller answers on " + port
                        + ": check that it is the right port, that the board has the firmware, and that baud is the same on both sides");
    }

    /**
     * Sets the controller up.
     *
     * @param here what it says of itself
     * @throws LineException if it does not answer, or the line is gone
     * @throws UnfitException if it refuses, or what is in force is not what was asked
     */
    void setUp(Here here) throws LineException, UnfitException {
        exchange.forget();
        exchange.allow(here.credits());
        for (int attempt = 0; attempt < SETUP_TRIES; attempt++) {
            exchange.sendSetup(setup);
            if (answered(() -> exchange.inForce().isPresent())) {
                Fit.checkInForce(setup, exchange.inForce().orElseThrow());
                return;
            }
        }
        throw new LineException("the controller on " + port + " does not answer the set-up");
    }

    private boolean answered(BooleanSupplier there) throws LineException, UnfitException {
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
