package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.log.StreamCharset;
import dev.lampwright.tool.fit.Boards;
import dev.lampwright.tool.fit.FileKnowledge;
import dev.lampwright.tool.fit.FittingTalk;
import dev.lampwright.tool.fit.GuidedFitting;
import dev.lampwright.tool.fit.LineTerminal;
import dev.lampwright.tool.fit.SerialBoards;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
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
            "Fits lights to a printer, step by step. Each step lights something and asks what you see. Finds the"
                    + " controller, the order of colours, the number of pixels, zones and their directions, a brightness,"
                    + " and with a meter the real currents; then writes a configuration and checks it. Answers are lines"
                    + " of text. They are kept in FILE.fit until FILE is written, so you can stop and resume later. If FILE"
                    + " exists, you choose a step, such as adding a light, moving a zone or listening to the printer again;"
                    + " everything else in the file stays unchanged."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:the file is written, or you have stopped",
            "1:answers ended early, or a file cannot be read or written",
            "2:usage error"
        },
        footer = {"", "Example: lampwright fit alder.toml"})
final class FitCommand implements Callable<Integer> {
    /** Longer than a light may take to turn on and off. */
    private static final Duration LONGEST_END = Duration.ofSeconds(8);

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The configuration file to write, or to change if it exists.")
    private Path file;

    @Mixin
    private RigOption rig;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            description = "Look for the controller at this port only. You can give it several times.")
    private List<String> ports = new ArrayList<>();

    @Mixin
    private BaudOption line;

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        file = rig.fileToWrite(file);
        AtomicFile.requireWritable(file);
        FileKnowledge knowledge = new ConfigKnowledge(file);
        LineTerminal terminal = new LineTerminal(
                new InputStreamReader(System.in, StreamCharset.current()),
                spec.commandLine().getOut());
        Boards boards = new SerialBoards(ports, line.baud());
        FittingTalk fitting = FittingTalk.of(file, terminal, boards, new SurveyedPrinter(), knowledge);
        LogSettings.silent();
        AtomicReference<GuidedFitting.End> end = new AtomicReference<>();
        GracefulShutdown.of(LONGEST_END, terminal::stop, () -> end.set(fitting.run()));
        return end.get() == GuidedFitting.End.INPUT_ENDED ? ExitCode.SOFTWARE : ExitCode.OK;
    }
}
