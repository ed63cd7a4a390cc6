package dev.lampwright.link;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Here;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** Asks a controller and waits for its answer. */
final class Asking {
    private static final long ASK_EVERY = TimeUnit.MILLISECONDS.toNanos(250);
    private static final long ASK_FOR = TimeUnit.SECONDS.toNanos(5);

    private final Exchange exchange;
    private final LongSupplier clock;
    private final BooleanSupplier closing;

    Asking(Exchange exchange, LongSupplier clock, BooleanSupplier closing) {
        this.exchange = exchange;
        this.clock = clock;
        this.closing = closing;
    }

    /**
     * Sends HELLO until a controller answers, for up to five seconds: a board may restart when its port is opened.
     *
     * @return what it reports about itself
     * @throws LineException if nobody answers, or the line is lost
     * @throws UnfitException if it refuses, for example because it uses another version
     */
    Here whoIsThere() throws LineException, UnfitException {
        exchange.restart();
        long started = clock.getAsLong();
        while (clock.getAsLong() - started < ASK_FOR) {
            exchange.sendHello();
            Optional<Here> here = greeted();
            if (here.isPresent()) {
                return here.get();
            }
        }
        throw new LineException(Phrase.of(
                "no_answer",
                "no controller answers on " + exchange.port()
                        + ": check that it is the right port, that the board has the firmware, and that baud is the same on both sides",
                "port",
                exchange.port()));
    }

    private Optional<Here> greeted() throws LineException, UnfitException {
        try {
            return await(exchange.answers()::here);
        } catch (UnfitException e) {
            boolean saysWhatToDo = exchange.answers()
                    .refused()
                    .map(refusal -> refusal.complaint() == Complaint.VERSION)
                    .orElse(true);
            throw saysWhatToDo ? e : new UnfitException(e.getMessage() + "; " + Refusal.NEW_FIRMWARE);
        }
    }

    /**
     * Waits for the answer to the last message: a quarter of a second, or as long as the line needs if that is more.
     *
     * @param answer checks for it
     * @return the answer, empty if it has not come in time
     * @throws LineException if the line is lost or being closed
     * @throws UnfitException if the controller refuses
     */
    <T> Optional<T> await(Supplier<Optional<T>> answer) throws LineException, UnfitException {
        long started = clock.getAsLong();
        long most = Math.max(ASK_EVERY, exchange.nanosToDeadline());
        for (long left = most; left > 0 && answer.get().isEmpty(); left = most - (clock.getAsLong() - started)) {
            if (closing.getAsBoolean()) {
                throw new LineException("the link to " + exchange.port() + " is being closed");
            }
            exchange.receive(left);
            Optional<String> refusal = exchange.answers().refusal();
            if (refusal.isPresent()) {
                throw new UnfitException(refusal.get());
            }
        }
        exchange.expire();
        return answer.get();
    }
}
