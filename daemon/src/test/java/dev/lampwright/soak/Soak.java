package dev.lampwright.soak;

import dev.lampwright.testing.Folders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * The soak as a command. Run it after {@code mvn package}, from the folder {@code daemon}:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.soak.Soak --minutes 30</pre>
 */
@Command(
        name = "soak",
        mixinStandardHelpOptions = true,
        description = "Runs the daemon among troubles of every kind and judges from outside all that it shows.",
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:nothing was wrong", "1:something was wrong, or it could not run", "2:usage error"})
final class Soak implements Callable<Integer> {
    @Option(
            names = "--minutes",
            paramLabel = "N",
            defaultValue = "10",
            description = "How long, at least. Default: ${DEFAULT-VALUE}.")
    private double minutes;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Of all that is left to chance; without it, another each time.")
    private long seed = System.nanoTime();

    @Option(
            names = "--board",
            description = "With the reference firmware on the emulated board, instead of a controller in memory.")
    private boolean board;

    private Soak() {}

    /**
     * Runs it.
     *
     * @param args see {@code --help}
     */
    public static void main(String[] args) {
        System.exit(new CommandLine(new Soak()).execute(args));
    }

    @Override
    public Integer call() throws IOException {
        Path folder = Files.createTempDirectory("lampwright-soak");
        try {
            Duration length = Duration.ofMillis(Math.round(minutes * 60_000));
            Summary summary = new SoakRun(new SoakRun.Settings(length, seed, board, folder)).run();
            System.out.print(summary.text());
            return summary.violations() == 0 ? 0 : 1;
        } finally {
            Folders.delete(folder);
        }
    }
}
