package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.engine.Daemon;
import dev.lampwright.link.Line;
import dev.lampwright.link.SerialLine;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;

/** Everything that the command {@code run} assembles, in this process, for tests of other packages. For one thread. */
public final class InProcess implements AutoCloseable {
    private final WatchedConfig config;
    private final Daemon daemon;
    private final Servers servers;

    /**
     * The command line's answer.
     *
     * @param status exit status
     * @param out its standard output
     * @param err its standard error
     */
    public record Answer(int status, String out, String err) {}

    /**
     * Assembles it; nothing runs yet.
     *
     * @param file the configuration, whose controller is on a serial port
     */
    public InProcess(Path file) throws ConfigException {
        Function<Config, Line> lines = next ->
                new SerialLine(next.controller().port(), next.controller().baud());
        config = new WatchedConfig(file, ConfigFile::read);
        daemon = new Daemon(config.inForce(), lines);
        servers = Servers.of(daemon, file, Optional.empty());
    }

    /** Starts it all. */
    public void start() {
        daemon.start();
        servers.follow(config.inForce().page(), config.inForce().metricsPort());
    }

    /** Does what {@code run} does twice a second. */
    public void lookAround() {
        daemon.lookAround();
        servers.lookAround();
    }

    /** Reads the configuration again, as on SIGHUP. */
    public void readAgain() {
        config.readAgain(next -> {
            daemon.change(next);
            servers.follow(next.page(), next.metricsPort());
        });
    }

    public Daemon daemon() {
        return daemon;
    }

    /** The configuration that took effect last. */
    public Config inForce() {
        return config.inForce();
    }

    /** What {@code lampwright check} says about a file. */
    public static Answer check(Path file) {
        Run run = Run.of("check", file.toString());
        return new Answer(run.status(), run.out(), run.err());
    }

    @Override
    public void close() {
        servers.close();
        daemon.close();
    }
}
