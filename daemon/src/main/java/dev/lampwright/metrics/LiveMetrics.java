package dev.lampwright.metrics;

import dev.lampwright.engine.Daemon;
import dev.lampwright.http.Attempts;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The metrics of a daemon, which come, go and move as the configuration says. Without them a daemon does what it is there for, so a port
 * that cannot be had ends nothing; it is tried again every few seconds, as long as {@link #lookAround} is called. For one thread at a time.
 */
public final class LiveMetrics implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(LiveMetrics.class);

    private final Daemon daemon;
    private final Attempts attempts;
    private OptionalInt port = OptionalInt.empty();
    private Optional<MetricsServer> server = Optional.empty();

    /**
     * Makes metrics that are not told yet.
     *
     * @param daemon whose figures
     */
    public LiveMetrics(Daemon daemon) {
        this(daemon, System::nanoTime);
    }

    LiveMetrics(Daemon daemon, LongSupplier nanoClock) {
        this.daemon = daemon;
        attempts = new Attempts(LOG, nanoClock);
    }

    /**
     * Does as a configuration says. If the port cannot be listened to, the log says why. Opens nothing anew if nothing has changed.
     *
     * @param next TCP port of loopback; empty for no metrics
     */
    public void follow(OptionalInt next) {
        if (next.equals(port) && server.isPresent() == next.isPresent()) {
            return;
        }
        close();
        port = next;
        next.ifPresent(this::open);
    }

    /** Tries again to listen to a port that could not be had, if it is time to. To be called every second or so. */
    public void lookAround() {
        if (attempts.areDue()) {
            port.ifPresent(this::open);
        }
    }

    private void open(int wanted) {
        try {
            MetricsServer opened = MetricsServer.start(wanted, daemon);
            server = Optional.of(opened);
            attempts.over();
            LOG.info("metrics are told at http://127.0.0.1:{}/metrics", opened.port());
        } catch (IOException e) {
            attempts.failed("no metrics are told: " + e.getMessage());
        }
    }

    /** Tells them no more. */
    @Override
    public void close() {
        server.ifPresent(MetricsServer::close);
        server = Optional.empty();
        port = OptionalInt.empty();
        attempts.over();
    }
}
