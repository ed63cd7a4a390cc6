package dev.lampwright.fuzz;

import dev.lampwright.testing.Folders;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * The attacks as a command:
 *
 * <pre>mvn -q -o -Pfuzz test -DskipTests -Dfuzz="--minutes 60"</pre>
 */
@Command(
        name = "fuzz",
        mixinStandardHelpOptions = true,
        description = "Attacks a daemon in this process by chance on every way in, and looks at everything after each"
                + " attack.",
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:nothing was wrong", "1:something was wrong, or it could not run", "2:usage error"})
final class Fuzz implements Callable<Integer> {
    @Option(
            names = "--minutes",
            paramLabel = "N",
            defaultValue = "10",
            description = "How long, at least. Default: ${DEFAULT-VALUE}.")
    private double minutes;

    @Option(
            names = "--attacks",
            paramLabel = "N",
            defaultValue = "1000000000",
            description = "How many on each target, at most.")
    private int attacks;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Of all that is left to chance; without it, another each time.")
    private long seed = System.nanoTime();

    @Option(names = "--target", paramLabel = "NAME", description = "One target alone, by its name in the summary.")
    private String target = "";

    @Option(names = "--first", paramLabel = "N", description = "The number of the first attack, to see that one again.")
    private int first;

    private Fuzz() {}

    /**
     * Runs it.
     *
     * @param args see {@code --help}
     */
    public static void main(String[] args) {
        System.exit(new CommandLine(new Fuzz()).execute(args));
    }

    @Override
    public Integer call() throws IOException {
        List<Target> targets = Targets.ALL.stream()
                .filter(any -> target.isEmpty() || any.name().equals(target))
                .toList();
        if (targets.isEmpty()) {
            System.err.println("there is no target \"" + target + "\"; choose one of: "
                    + String.join(", ", Targets.ALL.stream().map(Target::name).toList()));
            return CommandLine.ExitCode.USAGE;
        }
        Path folder = Files.createTempDirectory("lampwright-fuzz");
        try {
            Duration length = Duration.ofMillis(Math.round(minutes * 60_000));
            FuzzRun.Summary summary =
                    new FuzzRun(new FuzzRun.Settings(length, attacks, seed, targets, first, 60, 1, folder)).run();
            System.out.print(summary.text());
            return summary.failures().isEmpty() ? 0 : 1;
        } catch (AssertionError e) {
            System.out.println("FAILED " + e.getMessage());
            return 1;
        } finally {
            Folders.delete(folder);
        }
    }
}
