package dev.lampwright.cli;

import dev.lampwright.demo.ColourDepth;
import dev.lampwright.demo.Demo;
import java.io.IOException;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command {@code demo}: the daemon between an invented printer and a controller in memory. */
@Command(
        name = "demo",
        header = "Show the daemon with a simulated printer, without hardware.",
        description = {
            "Runs the daemon without hardware and without a broker: an invented printer runs complete jobs, and the"
                    + " strip is drawn in the terminal and on a live page. The last line is a summary."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:ended after --seconds or by a signal", "1:an error occurred", "2:usage error"},
        footer = {"", "Example: lampwright demo --seconds 30"})
final class DemoCommand implements Callable<Integer> {
    private static final double FASTEST = 1000;
    private static final Duration LONGEST_END = Duration.ofSeconds(4);

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--seconds",
            paramLabel = "N",
            description = "End after this many seconds; without it, Ctrl-C ends it. The first whole job takes 29 s.")
    private double seconds = Double.POSITIVE_INFINITY;

    @Option(
            names = "--speed",
            paramLabel = "X",
            defaultValue = "1",
            description = "How many seconds of the invented job pass in one second. Default: ${DEFAULT-VALUE}.")
    private double speed;

    @Option(
            names = "--colours",
            paramLabel = "HOW",
            description =
                    "full (24 bits), indexed (256 colours) or plain (text, one line per second). Default: whatever"
                            + " the terminal supports.")
    private String colours;

    @Option(names = "--no-page", description = "Do not serve the live page (otherwise on a free local port).")
    private boolean noPage;

    @Override
    public Integer call() throws IOException, InterruptedException {
        requireWithin("--seconds", seconds, Double.POSITIVE_INFINITY);
        requireWithin("--speed", speed, FASTEST);
        LogSettings.forPicture();
        try (Demo demo = new Demo(speed, depth(), !noPage, spec.commandLine().getOut())) {
            GracefulShutdown.of(LONGEST_END, demo::close, () -> demo.run(seconds));
        }
        return ExitCode.OK;
    }

    private ColourDepth depth() {
        if (colours == null) {
            return ColourDepth.of(System.getenv());
        }
        try {
            return ColourDepth.valueOf(colours.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            throw wrong("--colours is " + colours + "; write full, indexed or plain");
        }
    }

    private void requireWithin(String option, double value, double most) {
        if (!(value > 0 && value <= most)) {
            String limit = Double.isInfinite(most) ? "" : ", at most " + Math.round(most);
            throw wrong(option + " is " + value + "; write a number above 0" + limit);
        }
    }

    private ParameterException wrong(String what) {
        return new ParameterException(spec.commandLine(), what);
    }
}
