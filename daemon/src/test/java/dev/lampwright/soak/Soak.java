package dev.lampwright.soak;

import dev.lampwright.testing.Folders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

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
    private static final int MOST_RIGS = 32;

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

    @Option(
            names = "--rigs",
            paramLabel = "N",
            defaultValue = "1",
            description =
                    "How many rigs, in one process. With more than one, each trouble comes to one of them, and the"
                            + " others have to carry on as if nothing had happened. Default: ${DEFAULT-VALUE}.")
    private int rigs;

    @Spec
    private CommandSpec spec;

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
        if (rigs < 1 || rigs > MOST_RIGS) {
            throw new ParameterException(
                    spec.commandLine(), "--rigs is " + rigs + "; write a number from 1 to " + MOST_RIGS);
        }
        Path folder = Files.createTempDirectory("lampwright-soak");
        try {
            Duration length = Duration.ofMillis(Math.round(minutes * 60_000));
            SoakRun.Settings settings = new SoakRun.Settings(length, seed, board, folder);
            Summary summary = rigs == 1
                    ? new SoakRun(settings).run()
                    : new RigsRun(settings, rigs, EnumSet.allOf(Kind.class)).run();
            System.out.print(summary.text());
            return summary.violations() == 0 ? 0 : 1;
        } finally {
            Folders.delete(folder);
        }
    }
}
