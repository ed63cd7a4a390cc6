package dev.lampwright.metrics;

import dev.lampwright.engine.Daemon;
import dev.lampwright.http.RetriedServer;
import dev.lampwright.rig.Rigs;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The metrics of a daemon, served as configured. A daemon does its job without them, so if the port cannot be opened, everything else
 * continues; it is retried every few seconds, as long as {@link #lookAround} is called. For one thread at a time.
 */
public final class LiveMetrics implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(LiveMetrics.class);

    private final RetriedServer<Integer, MetricsServer> standing;

    /**
     * Creates metrics that are not served yet.
     *
     * @param daemon whose figures
     */
    public LiveMetrics(Daemon daemon) {
        this(daemon, System::nanoTime);
    }

    LiveMetrics(Daemon daemon, LongSupplier nanoClock) {
        this(ProcessMetrics.of(daemon), nanoClock);
    }

    /**
     * Creates metrics of several rigs that are not served yet.
     *
     * @param rigs whose figures
     */
    public LiveMetrics(Rigs rigs) {
        this(ProcessMetrics.of(rigs), System::nanoTime);
    }

    private LiveMetrics(ProcessMetrics metrics, LongSupplier nanoClock) {
        standing = new RetriedServer<>(port -> open(port, metrics), "there are no metrics", LOG, nanoClock);
    }

    private static MetricsServer open(int port, ProcessMetrics metrics) throws IOException {
        MetricsServer opened = MetricsServer.start(port, metrics);
        LOG.info("metrics are at http://127.0.0.1:{}/metrics", opened.port());
        return opened;
    }

    /**
     * Follows a configuration. If it is not possible to listen on the port, the log says why. Reopens nothing unless something has changed.
     *
     * @param next loopback TCP port; empty for no metrics
     */
    public void follow(OptionalInt next) {
        standing.follow(next.isPresent() ? Optional.of(next.getAsInt()) : Optional.empty(), server -> true);
    }

    /** Retries a port that could not be opened, if it is time. Call about once a second. */
    public void lookAround() {
        standing.lookAround();
    }

    /** Stops serving them. */
    @Override
    public void close() {
        standing.close();
    }
}
