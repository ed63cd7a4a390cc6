package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.engine.Daemon;
import dev.lampwright.metrics.LiveMetrics;
import dev.lampwright.page.LivePage;

/** Where a daemon can be seen from outside: its live page and its metrics, if the configuration asks for them. */
final class Servers implements AutoCloseable {
    private final LivePage page;
    private final LiveMetrics metrics;

    /** Makes them; nothing listens yet. */
    Servers(Daemon daemon) {
        page = new LivePage(daemon, new PageAdvice());
        metrics = new LiveMetrics(daemon);
    }

    /** Does as a configuration says. What cannot be had is told in the log, and ends nothing. */
    void follow(Config config) {
        page.follow(config.page());
        metrics.follow(config.metricsPort());
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
