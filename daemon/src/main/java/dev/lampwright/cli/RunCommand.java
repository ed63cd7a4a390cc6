package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.PageSettings;
import dev.lampwright.config.ShopFile;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.Keeping;
import dev.lampwright.engine.Recorder;
import dev.lampwright.engine.RigPlace;
import dev.lampwright.engine.StatusWatch;
import dev.lampwright.history.HistoryClock;
import dev.lampwright.link.Line;
import dev.lampwright.link.SerialLine;
import dev.lampwright.service.BootTime;
import dev.lampwright.service.ServiceWatch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command {@code run}: the daemon. */
@Command(
        name = "run",
        header = "Run the daemon.",
        description = {
            "Runs the daemon: printer status in over MQTT, light out over the serial line, until it is stopped. Reads"
                    + " its configuration again when the file changes and on SIGHUP; an invalid file is rejected and the"
                    + " current configuration stays active.",
            "A folder with a shop.toml and a file rigs/NAME.toml for each rig runs all of them in one process. Add,"
                    + " change or remove a file: its rig starts, changes or stops, and the others carry on."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:stopped by a signal; a second one ends it at once, with 130 or 143",
            "1:the configuration is invalid, or a file cannot be read or written",
            "2:usage error"
        },
        footer = {
            "",
            "Example: lampwright run --config /etc/lampwright/lampwright.toml",
            "Example: lampwright run --config /etc/lampwright"
        })
final class RunCommand implements Callable<Integer> {
    private static final long LOOK_EVERY_MS = 500;
    private static final Duration LONGEST_END = Duration.ofMillis(900);

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--config",
            paramLabel = "FILE",
            required = true,
            description = "The configuration file, or the folder with the files of several rigs. In a folder without"
                    + " shop.toml, it is lampwright.toml.")
    private Path file;

    @Option(
            names = "--record",
            paramLabel = "FILE",
            description =
                    "Write the printer's status to this file while running, as JSON lines that render --status plays"
                            + " back.")
    private Path recording;

    @Option(
            names = "--fit",
            paramLabel = "PORT",
            arity = "0..1",
            fallbackValue = "" + PageSettings.USUAL_PORT,
            description = "If the file does not exist, offer the guided fitting to browsers on this computer, at PORT"
                    + " (default: ${FALLBACK-VALUE}), until it does. Where a service manager gives a folder for state, the"
                    + " file is written there, and used as long as the given one does not exist. Browsers on other"
                    + " computers may then fit too, with the token that 'lampwright page' prints as a code.")
    private Integer fitPort;

    private final CountDownLatch stopped = new CountDownLatch(1);

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        boolean shop = ShopFile.isIn(file);
        Path single = Files.isDirectory(file) ? file.resolve(RigOption.ONLY_FILE) : file;
        Path found = fitPort == null ? single : FirstFit.file(single, System.getenv());
        if (fitPort != null && !shop && Files.notExists(found)) {
            GracefulShutdown.of(LONGEST_END, stopped::countDown, () -> runOnceFitted(found));
            return ExitCode.OK;
        }
        if (fitPort != null) {
            FirstFit.forgetToken(System.getenv());
        }
        if (shop) {
            runShop();
        } else {
            WatchedConfig config = watched(found);
            GracefulShutdown.of(LONGEST_END, stopped::countDown, () -> run(found, config));
        }
        return ExitCode.OK;
    }

    private static WatchedConfig watched(Path file) throws ConfigException {
        return new WatchedConfig(file, KeptLooks.path(file), KeptLooks::read);
    }

    private void runOnceFitted(Path file) throws IOException, InterruptedException {
        if (!new FirstFit(file, fitPort, System.getenv()).run(stopped)) {
            return;
        }
        FirstFit.forgetToken(System.getenv());
        try {
            run(file, watched(file));
        } catch (ConfigException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private void runShop() throws ConfigException, InterruptedException {
        if (recording != null) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--record records one rig; give the file of that rig with --config, and do not run it elsewhere");
        }
        ShopRun shop = new ShopRun(file, stopped, LOOK_EVERY_MS);
        GracefulShutdown.of(LONGEST_END, stopped::countDown, () -> {
            shop.run((rig, config, place) -> daemon(rig, config, StatusWatch.NOBODY, place));
        });
    }

    private void run(Path single, WatchedConfig config) throws IOException, InterruptedException {
        Logger log = LoggerFactory.getLogger(RunCommand.class);
        HangUp hangUp = HangUp.listen();
        try (Recorder recorder = recording == null ? null : new Recorder(recording);
                Daemon daemon = daemon(
                        single, config.inForce(), recorder == null ? StatusWatch.NOBODY : recorder, RigPlace.ALONE);
                ServiceWatch service = ServiceWatch.of(System.getenv(), daemon::pulse, () -> StatusWords.of(daemon));
                Servers servers = Servers.of(daemon, single, Optional.ofNullable(recording))) {
            daemon.start();
            service.start();
            log.info("started with {}", single);
            servers.follow(config.inForce().page(), config.inForce().metricsPort());
            untilStopped(config, daemon, service, servers, hangUp);
        }
    }

    private void untilStopped(WatchedConfig config, Daemon daemon, ServiceWatch service, Servers servers, HangUp hangUp)
            throws InterruptedException {
        while (!stopped.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
            daemon.lookAround();
            servers.lookAround();
            boolean asked = hangUp.heard();
            if (config.changed() || asked) {
                service.reloading();
                config.readAgain(next -> {
                    daemon.change(next);
                    servers.follow(next.page(), next.metricsPort());
                });
                service.reloaded();
            }
        }
    }

    private static Daemon daemon(Path from, Config config, StatusWatch watch, RigPlace place) {
        Function<Config, Line> lines = next ->
                new SerialLine(next.controller().port(), next.controller().baud());
        return new Daemon(config, lines, watch, Optional.of(keeping(from)), place);
    }

    private static Keeping keeping(Path from) {
        Map<String, String> environment = System.getenv();
        Path home = Path.of(System.getProperty("user.home"));
        return new Keeping(
                StateFile.of(from, environment, home, StateFile.ASKS),
                StateFile.of(from, environment, home, StateFile.HISTORY),
                StateFile.isGiven(environment),
                BootTime.isNeeded() ? HistoryClock.of(BootTime::millis) : HistoryClock.SYSTEM);
    }
}
