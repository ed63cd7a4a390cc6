package dev.lampwright.http;

import java.io.IOException;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import org.slf4j.Logger;

/**
 * A server that comes, goes and moves as is wanted. One that cannot be had ends nothing: the log says why, and it is tried again every
 * few seconds, as long as {@link #lookAround} is called. For one thread at a time.
 *
 * @param <W> what is wanted of it
 * @param <S> the server
 */
public final class RetriedServer<W, S extends RetriedServer.Server> implements AutoCloseable {
    /** From one attempt to the next, in s. */
    public static final int PAUSE_S = 5;

    private final Opener<W, S> opener;
    private final String without;
    private final Attempts attempts;
    private Optional<W> wanted = Optional.empty();
    private Optional<S> server = Optional.empty();

    /** What can be shut. */
    public interface Server extends AutoCloseable {
        @Override
        void close();
    }

    /**
     * Opens a server.
     *
     * @param <W> what is wanted of it
     * @param <S> the server
     */
    public interface Opener<W, S> {
        /**
         * Opens it.
         *
         * @param wanted how it is to be
         * @return it, listening
         * @throws IOException if it cannot be had; the text says why and what to do
         */
        S open(W wanted) throws IOException;
    }

    /**
     * Opens nothing yet.
     *
     * @param opener opens the server
     * @param without what is missing without it, for the log
     * @param log hears why it cannot be had
     * @param nanoClock monotonic time, in ns
     */
    public RetriedServer(Opener<W, S> opener, String without, Logger log, LongSupplier nanoClock) {
        this.opener = opener;
        this.without = without;
        attempts = new Attempts(log, nanoClock);
    }

    /**
     * Opens, moves or closes the server; does nothing if it already is as wanted, or is being tried.
     *
     * @param next how the server is to be; empty for none
     * @param good whether the one that is there may stay, if nothing else is wanted
     */
    public void follow(Optional<W> next, Predicate<S> good) {
        boolean stays = server.map(good::test).orElse(true);
        if (next.equals(wanted) && stays) {
            return;
        }
        close();
        wanted = next;
        open();
    }

    /** Tries again to open what could not be had, if it is time to. To be called every second or so. */
    public void lookAround() {
        if (attempts.areDue()) {
            open();
        }
    }

    private void open() {
        if (wanted.isEmpty()) {
            return;
        }
        try {
            server = Optional.of(opener.open(wanted.get()));
            attempts.over();
        } catch (IOException e) {
            attempts.failed(without + ": " + e.getMessage());
        }
    }

    /**
     * The server.
     *
     * @return empty while there is none
     */
    public Optional<S> server() {
        return server;
    }

    /** Shuts it, if it is there, and wants none. */
    @Override
    public void close() {
        server.ifPresent(Server::close);
        server = Optional.empty();
        wanted = Optional.empty();
        attempts.over();
    }
}
