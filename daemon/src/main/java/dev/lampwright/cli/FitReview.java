package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;

/** What {@code check} and {@code plan} say about a file that the fitting has written. */
final class FitReview {
    private FitReview() {}

    /**
     * Reviews a file.
     *
     * @param written a configuration
     * @return lines for the user
     */
    static List<String> of(Path written) {
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

    /** The same verdicts as in the plan. */
    private static List<String> verdicts(Path written) {
        try {
            return WiringVerdicts.lines(ConfigFile.read(written), String.valueOf(written.getFileName()));
        } catch (ConfigException e) {
            return e.mistakes().stream().map(Object::toString).toList();
        }
    }
}
