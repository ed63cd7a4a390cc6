package dev.lampwright.cli;

import dev.lampwright.config.PageSettings;
import dev.lampwright.engine.Daemon;
import dev.lampwright.metrics.LiveMetrics;
import dev.lampwright.page.LivePage;
import dev.lampwright.rig.Rigs;
import java.util.Optional;
import java.util.OptionalInt;

/** Where a process can be seen from outside: its live page and its metrics, if the configuration asks for them. */
final class Servers implements AutoCloseable {
    private final LivePage page;
    private final LiveMetrics metrics;

    private Servers(LivePage page, LiveMetrics metrics) {
        this.page = page;
        this.metrics = metrics;
    }

    /** Makes those of one daemon; nothing listens yet. */
    static Servers of(Daemon daemon) {
        return new Servers(new LivePage(daemon, new PageAdvice()), new LiveMetrics(daemon));
    }

    /** Makes those of several rigs; nothing listens yet. */
    static Servers of(Rigs rigs) {
        return new Servers(new LivePage(rigs, new PageAdvice()), new LiveMetrics(rigs));
    }

    /**
     * Follows a configuration. If a port cannot be opened, the log says why, and everything else carries on.
     *
     * @param settings of the page; empty for none
     * @param metricsPort port of loopback; empty for no metrics
     */
    void follow(Optional<PageSettings> settings, OptionalInt metricsPort) {
        page.follow(settings);
        metrics.follow(metricsPort);
    }

    /** Tries again what could not be had, if it is time to. To be called every second or so. */
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
