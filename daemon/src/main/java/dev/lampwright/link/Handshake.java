package dev.lampwright.link;

import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** Who is there, and does it take the set-up? */
final class Handshake {
    private static final long ASK_EVERY = TimeUnit.MILLISECONDS.toNanos(250);
    private static final long ASK_FOR = TimeUnit.SECONDS.toNanos(5);
    private static final int SETUP_TRIES = 3;

    private final Exchange exchange;
    private final Answers answers;
    private final Setup setup;
    private final LongSupplier clock;
    private final BooleanSupplier closing;

    Handshake(Exchange exchange, Setup setup, LongSupplier clock, BooleanSupplier closing) {
        this.exchange = exchange;
        this.setup = setup;
        this.clock = clock;
        this.closing = closing;
        answers = exchange.answers();
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
            Optional<Here> here = await(answers::here);
            if (here.isPresent()) {
                Fit.check(here.get(), setup);
                return here.get();
            }
        }
        throw new LineException(
                "no controller answers on " + exchange.port()
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
        answers.forget();
        exchange.credit().restart(here.credits());
        for (int attempt = 0; attempt < SETUP_TRIES; attempt++) {
            exchange.sendSetup(setup);
            Optional<Setup> inForce = await(answers::inForce);
            if (inForce.isPresent()) {
                Fit.checkInForce(setup, inForce.get());
                return;
            }
        }
        throw new LineException("the controller on " + exchange.port() + " does not answer the set-up");
    }

    /** Waits for an answer for a quarter of a second, or for as long as the line needs if that is more. */
    private <T> Optional<T> await(Supplier<Optional<T>> answer) throws LineException, UnfitException {
        long started = clock.getAsLong();
        long most = Math.max(ASK_EVERY, exchange.nanosToDeadline());
        for (long left = most; left > 0 && answer.get().isEmpty(); left = most - (clock.getAsLong() - started)) {
            if (closing.getAsBoolean()) {
                throw new LineException("the link to " + exchange.port() + " is being closed");
            }
            exchange.receive(left);
            if (answers.refusal().isPresent()) {
                throw new UnfitException(answers.refusal().get());
            }
        }
        exchange.expire();
        return answer.get();
    }
}
