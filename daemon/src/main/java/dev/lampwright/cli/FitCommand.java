package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.log.StreamCharset;
import dev.lampwright.tool.fit.GuidedFitting;
import dev.lampwright.tool.fit.LineTerminal;
import dev.lampwright.tool.fit.SerialBoards;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code fit}: the guided fitting. */
@Command(
        name = "fit",
        header = "Set up the lights step by step.",
        description = {
            "Fits lights to a printer, step by step: each step lights something and asks what you see. Finds the controller,"
                    + " the order of colours, the number of pixels, zones and their directions, a brightness, and with a"
                    + " meter the real currents; then writes a configuration and checks it. Answers are lines of text; they"
                    + " are kept in FILE.fit until FILE is written, so you can stop and resume later."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:the file is written, or you have stopped",
            "1:answers ended early, or a file cannot be read or written",
            "2:usage error"
        },
        footer = {"", "Example: lampwright fit alder.toml"})
final class FitCommand implements Callable<Integer> {
    /** Longer than a light may take to be shown, and to be put out. */
    private static final Duration LONGEST_END = Duration.ofSeconds(8);

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The configuration file to write.")
    private Path file;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            description = "Look for the controller at this port only; may be given several times.")
    private List<String> ports = new ArrayList<>();

    @Mixin
    private BaudOption line;

    @Override
    public Integer call() throws IOException, InterruptedException {
        AtomicFile.requireWritable(file);
        LogSettings.silent();
        LineTerminal terminal = new LineTerminal(
                new InputStreamReader(System.in, StreamCharset.current()),
                spec.commandLine().getOut());
        GuidedFitting fitting = new GuidedFitting(
                file, terminal, new SerialBoards(ports, line.baud()), new SurveyedPrinter(), FitCommand::review);
        AtomicReference<GuidedFitting.End> end = new AtomicReference<>();
        GracefulShutdown.of(LONGEST_END, terminal::stop, () -> end.set(fitting.run()));
        return end.get() == GuidedFitting.End.INPUT_ENDED ? ExitCode.SOFTWARE : ExitCode.OK;
    }

    private static List<String> review(Path written) {
        List<String> lines = new ArrayList<>();
        StringWriter said = new StringWriter();
        PrintWriter writer = new PrintWriter(said);
        CommandLine line = Lampwright.commandLine().setOut(writer).setErr(writer);
        line.execute("check", written.toString());
        lines.add("");
        lines.add("lampwright check " + written + " says:");
        said.toString().lines().forEach(each -> lines.add("    " + each));
        lines.add("");
        lines.add("lampwright plan " + written + " says, in short:");
        verdicts(written).forEach(each -> lines.add("    " + each));
        lines.add("");
        return lines;
    }

    /** The same verdicts as those of the plan. */
    private static List<String> verdicts(Path written) {
        try {
            return WiringVerdicts.lines(ConfigFile.read(written), String.valueOf(written.getFileName()));
        } catch (ConfigException e) {
            return e.mistakes().stream().map(Object::toString).toList();
        }
    }
}
