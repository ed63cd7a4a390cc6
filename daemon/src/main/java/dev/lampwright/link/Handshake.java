package dev.lampwright.link;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import java.util.Optional;

/** Identifies the controller and sets it up. */
final class Handshake {
    private static final int SETUP_TRIES = 3;

    private final Exchange exchange;
    private final Asking asking;
    private final Setup setup;

    Handshake(Exchange exchange, Asking asking, Setup setup) {
        this.exchange = exchange;
        this.asking = asking;
        this.setup = setup;
    }

    /**
     * Sends HELLO until a controller answers, for up to five seconds.
     *
     * @return what it reports about itself
     * @throws LineException if nobody answers, or the line is lost
     * @throws UnfitException if it cannot do what the set-up requires, or uses another version
     */
    Here ask() throws LineException, UnfitException {
        Here here = asking.whoIsThere();
        Fit.check(here, setup);
        return here;
    }

    /**
     * Sets the controller up.
     *
     * @param here what it reports about itself
     * @throws LineException if it does not answer, or the line is lost
     * @throws UnfitException if it refuses, or the active set-up is not the requested one
     */
    void setUp(Here here) throws LineException, UnfitException {
        exchange.answers().forget();
        exchange.credit().restart(here.credits());
        for (int attempt = 0; attempt < SETUP_TRIES; attempt++) {
            exchange.sendSetup(setup);
            Optional<Setup> inForce = inForce();
            if (inForce.isPresent()) {
                Fit.checkInForce(setup, inForce.get());
                return;
            }
        }
        throw new LineException(Phrase.of(
                "setup_unanswered",
                "the controller on " + exchange.port()
                        + " does not answer the set-up request: check the cable and the ground wire, then reset the board",
                "port",
                exchange.port()));
    }

    private Optional<Setup> inForce() throws LineException, UnfitException {
        try {
            return asking.await(exchange.answers()::inForce);
        } catch (UnfitException e) {
            Optional<Refusal> refused = exchange.answers().refused();
            throw refused.isEmpty()
                    ? e
                    : new UnfitException("the set-up was refused: " + e.getMessage() + "; "
                            + SetupKeys.remedy(setup, refused.get()));
        }
    }
}
