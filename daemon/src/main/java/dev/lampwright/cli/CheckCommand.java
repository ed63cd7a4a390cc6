package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.ShopFile;
import dev.lampwright.json.Json;
import dev.lampwright.tool.check.LookMistakes;
import dev.lampwright.tool.check.Progress;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code check}: whether a configuration is valid, and how it is understood. */
@Command(
        name = "check",
        header = "Check a configuration file.",
        description = {
            "Reads a configuration file and draws each of its looks for ten seconds with simulated status. Prints one line for"
                    + " each mistake, or one line that says how it understood the file. A look that flashes more than three times"
                    + " in a second is a mistake. Warns about states that look alike to people without red, green or blue cones,"
                    + " about faults and readings that nothing reports, and about files that do not exist.",
            "In a folder with a shop.toml, checks all rigs, in one line each, or the one that --rig names."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {
            "0:the file is valid, or all of them are",
            "1:a file is invalid or cannot be read",
            "2:usage error"
        },
        footer = {"", "Example: lampwright check alder.toml", "Example: lampwright check /etc/lampwright --rig alder"})
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The configuration file, or the folder of several rigs.")
    private Path file;

    @Mixin
    private RigOption rig;

    @Mixin
    private JsonOption json;

    @Override
    public Integer call() throws ConfigException {
        if (ShopFile.isIn(file) && !rig.isGiven()) {
            return json.wanted() ? answerForAllInJson() : answerForAll();
        }
        file = rig.file(file);
        return json.wanted() ? answerInJson() : answer();
    }

    private int answerForAll() throws ConfigException {
        PrintWriter err = spec.commandLine().getErr();
        ShopCheck all = ShopCheck.of(file, err);
        all.print(spec.commandLine().getOut(), err);
        return all.isGood() ? ExitCode.OK : ExitCode.SOFTWARE;
    }

    private int answerForAllInJson() {
        try {
            ShopCheck all = ShopCheck.of(file, spec.commandLine().getErr());
            print(Json.of(all.map()));
            return all.isGood() ? ExitCode.OK : ExitCode.SOFTWARE;
        } catch (ConfigException e) {
            print(Json.of(ConfigSummary.map(file.resolve(ShopFile.NAME).toString(), e)));
            return ExitCode.SOFTWARE;
        }
    }

    private int answer() throws ConfigException {
        Examined examined = examined();
        print(verdict(file.toString(), examined, ConfigSummary.line(examined)));
        ConfigWarnings.about(examined.config()).forEach(this::warn);
        return ExitCode.OK;
    }

    /** The verdict on a file without mistakes, and how it is understood. */
    static String verdict(String file, Examined examined, String understood) {
        boolean faults = ConfigWarnings.showsFaults(examined.config().bindings());
        return file
                + (faults
                        ? ": good; "
                        : ": can be used, but NO FAULT WILL EVER BE SHOWN: 'lampwright fit " + file
                                + "' listens for the printer's words for one; ")
                + understood;
    }

    private int answerInJson() {
        try {
            Examined examined = examined();
            Map<String, Object> answer = ConfigSummary.map(file.toString(), examined);
            answer.put("warnings", ConfigWarnings.about(examined.config()));
            print(Json.of(answer));
            return ExitCode.OK;
        } catch (ConfigException e) {
            print(Json.of(ConfigSummary.map(file.toString(), e)));
            return ExitCode.SOFTWARE;
        }
    }

    private Examined examined() throws ConfigException {
        Examined examined = ConfigFile.examine(file, KeptLooks.OF_ANY_DAEMON);
        Progress progress = DrawingLine.onTerminal(spec.commandLine().getErr(), file);
        List<Mistake> mistakes = LookMistakes.of(examined, progress);
        if (!mistakes.isEmpty()) {
            throw new ConfigException(mistakes);
        }
        return examined;
    }

    private void warn(String misgiving) {
        spec.commandLine().getErr().println(file + ": warning: " + misgiving);
    }

    private void print(String line) {
        spec.commandLine().getOut().println(line);
    }
}
