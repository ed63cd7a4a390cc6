package dev.lampwright.cli;

import dev.lampwright.config.PageSettings;
import dev.lampwright.config.RigFile;
import dev.lampwright.engine.Daemon;
import dev.lampwright.metrics.LiveMetrics;
import dev.lampwright.page.LivePage;
import dev.lampwright.page.Workshop;
import dev.lampwright.rig.Rigs;
import dev.lampwright.tool.bench.BenchFiles;
import dev.lampwright.tool.bench.BenchWorker;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** What a process serves to the outside: its live page and its metrics, if configured. */
final class Servers implements AutoCloseable {
    private final LivePage page;
    private final LiveMetrics metrics;
    private final BenchWorker worker;

    private Servers(LivePage page, LiveMetrics metrics, BenchWorker worker) {
        this.page = page;
        this.metrics = metrics;
        this.worker = worker;
    }

    /**
     * Creates those of one daemon; nothing listens yet.
     *
     * @param daemon what they show
     * @param file its configuration
     * @param recording the file that it records into, if it does
     */
    static Servers of(Daemon daemon, Path file, Optional<Path> recording) {
        BenchWorker worker = new BenchWorker();
        Workshop workshop =
                new Workshop(PageBench.of(rig -> files(file, recording), worker), PageFitter.of(rig -> file));
        return new Servers(new LivePage(daemon, new PageAdvice(), workshop), new LiveMetrics(daemon), worker);
    }

    /**
     * Creates those of several rigs; nothing listens yet.
     *
     * @param rigs what they show
     * @param folder the shop's folder
     */
    static Servers of(Rigs rigs, Path folder) {
        BenchWorker worker = new BenchWorker();
        Function<String, Path> rigFiles = rig -> RigFile.of(folder, rig).path();
        Workshop workshop = new Workshop(
                PageBench.of(rig -> files(rigFiles.apply(rig), Optional.empty()), worker), PageFitter.of(rigFiles));
        return new Servers(new LivePage(rigs, new PageAdvice(), workshop), new LiveMetrics(rigs), worker);
    }

    private static BenchFiles files(Path config, Optional<Path> recording) {
        return new BenchFiles(config, KeptLooks.path(config), recording);
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
        worker.close();
    }
}
