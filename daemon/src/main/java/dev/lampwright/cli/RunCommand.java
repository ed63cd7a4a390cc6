package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.engine.Daemon;
import dev.lampwright.link.SerialLine;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;

/** The command {@code run}: the daemon. */
@Command(
        name = "run",
        description =
                "Runs the daemon: printer status in over MQTT, light out over the serial line, until it is stopped.",
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:stopped by a signal",
            "1:the configuration is not right, or cannot be read",
            "2:called wrongly"
        },
        footer = {"", "Example: lampwright run --config /etc/lampwright/lampwright.toml"})
final class RunCommand implements Callable<Integer> {
    @Option(names = "--config", paramLabel = "FILE", required = true, description = "The configuration file.")
    private Path file;

    @Override
    public Integer call() throws ConfigException, InterruptedException {
        Config config = ConfigFile.read(file);
        LogSettings.forJournal();
        CountDownLatch stopped = new CountDownLatch(1);
        GoodEnd.of(stopped::countDown, () -> {
            try (Daemon daemon = new Daemon(config, new SerialLine(config.port(), config.baud()))) {
                daemon.start();
                LoggerFactory.getLogger(RunCommand.class).info("started with {}", file);
                stopped.await();
            }
        });
        return ExitCode.OK;
    }
}
