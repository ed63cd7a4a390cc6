package dev.lampwright.cli;

import dev.lampwright.config.PageSettings;
import dev.lampwright.engine.Daemon;
import dev.lampwright.metrics.LiveMetrics;
import dev.lampwright.page.LivePage;
import dev.lampwright.rig.Rigs;
import java.util.Optional;
import java.util.OptionalInt;

/** What a process serves to the outside: its live page and its metrics, if configured. */
final class Servers implements AutoCloseable {
    private final LivePage page;
    private final LiveMetrics metrics;

    private Servers(LivePage page, LiveMetrics metrics) {
        this.page = page;
        this.metrics = metrics;
    }

    /** Creates those of one daemon; nothing listens yet. */
    static Servers of(Daemon daemon) {
        return new Servers(new LivePage(daemon, new PageAdvice()), new LiveMetrics(daemon));
    }

    /** Creates those of several rigs; nothing listens yet. */
    static Servers of(Rigs rigs) {
        return new Servers(new LivePage(rigs, new PageAdvice()), new LiveMetrics(rigs));
    }

    /**
     * Follows a configuration. If a port cannot be opened, the log says why, and everything else carries on.
     *
     * @param settings of the page; empty if none
     * @param metricsPort loopback port; empty for no metrics
     */
    void follow(Optional<PageSettings> settings, OptionalInt metricsPort) {
        page.follow(settings);
        metrics.follow(metricsPort);
    }

    /** Retries servers that could not be started, if it is time. Call about once a second. */
    void lookAround() {
        page.lookAround();
        metrics.lookAround();
    }

    @Override
    public void close() {
        metrics.close();
        page.close();
    }
}
