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
 * The metrics of a daemon, which come, go and move as the configuration says. Without them a daemon does what it is there for, so a port
 * that cannot be had ends nothing; it is tried again every few seconds, as long as {@link #lookAround} is called. For one thread at a time.
 */
public final class LiveMetrics implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(LiveMetrics.class);

    private final RetriedServer<Integer, MetricsServer> standing;

    /**
     * Makes metrics that are not served yet.
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
     * Makes metrics of several rigs that are not served yet.
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
     * Does as a configuration says. If the port cannot be listened to, the log says why. Reopens nothing unless something has changed.
     *
     * @param next TCP port of loopback; empty for no metrics
     */
    public void follow(OptionalInt next) {
        standing.follow(next.isPresent() ? Optional.of(next.getAsInt()) : Optional.empty(), server -> true);
    }

    /** Tries again to listen to a port that could not be had, if it is time to. To be called every second or so. */
    public void lookAround() {
        standing.lookAround();
    }

    /** Tells them no more. */
    @Override
    public void close() {
        standing.close();
    }
}
