package dev.lampwright.http;

import java.io.IOException;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import org.slf4j.Logger;

/**
 * A server that is opened, closed and moved as required. If it cannot be opened, everything else continues: the log says why, and it is
 * retried every few seconds, as long as {@link #lookAround} is called. For one thread at a time.
 *
 * @param <W> the type of its settings
 * @param <S> the server
 */
public final class RetriedServer<W, S extends RetriedServer.Server> implements AutoCloseable {
    /** Time between attempts, in s. */
    public static final int PAUSE_S = 5;

    private final Opener<W, S> opener;
    private final String without;
    private final Attempts attempts;
    private Optional<W> wanted = Optional.empty();
    private Optional<S> server = Optional.empty();

    /** What can be closed. */
    public interface Server extends AutoCloseable {
        @Override
        void close();
    }

    /**
     * Opens a server.
     *
     * @param <W> the type of its settings
     * @param <S> the server
     */
    public interface Opener<W, S> {
        /**
         * Opens it.
         *
         * @param wanted its settings
         * @return the server, listening
         * @throws IOException if it cannot be opened; the message says why and what to do
         */
        S open(W wanted) throws IOException;
    }

    /**
     * Opens nothing yet.
     *
     * @param opener opens the server
     * @param without what is missing without it, for the log
     * @param log receives why it cannot be opened
     * @param nanoClock monotonic time, in ns
     */
    public RetriedServer(Opener<W, S> opener, String without, Logger log, LongSupplier nanoClock) {
        this.opener = opener;
        this.without = without;
        attempts = new Attempts(log, nanoClock);
    }

    /**
     * Opens, moves or closes the server; does nothing if it already has these settings, or is being retried.
     *
     * @param next the settings of the server; empty for no server
     * @param good whether the existing one may stay if the settings are the same
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

    /** Retries opening the server if that failed, if it is time. Call about once a second. */
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

    /** Closes it, if it exists, and stops retrying. */
    @Override
    public void close() {
        server.ifPresent(Server::close);
        server = Optional.empty();
        wanted = Optional.empty();
        attempts.over();
    }
}
