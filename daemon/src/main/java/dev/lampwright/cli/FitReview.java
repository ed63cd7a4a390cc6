package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.phrase.Phrase;
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
     * @return phrases for the user
     */
    static List<Phrase> of(Path written) {
        List<Phrase> lines = new ArrayList<>();
        StringWriter said = new StringWriter();
        PrintWriter writer = new PrintWriter(said);
        CommandLine line = Lampwright.commandLine().setOut(writer).setErr(writer);
        line.execute("check", written.toString());
        lines.add(Phrase.plain(""));
        lines.add(Phrase.of("check_says", "lampwright check " + written + " says:", "file", written));
        said.toString().lines().forEach(each -> lines.add(Phrase.quoted("    " + each)));
        lines.add(Phrase.plain(""));
        lines.add(Phrase.of("plan_says", "lampwright plan " + written + " says, in short:", "file", written));
        lines.addAll(verdicts(written));
        lines.add(Phrase.plain(""));
        return lines;
    }

    /** The same verdicts as in the plan. */
    private static List<Phrase> verdicts(Path written) {
        try {
            return WiringVerdicts.phrases(ConfigFile.read(written), String.valueOf(written.getFileName())).stream()
                    .map(verdict -> new Phrase(verdict.code(), verdict.values(), "    " + verdict.english()))
                    .toList();
        } catch (ConfigException e) {
            return e.mistakes().stream()
                    .map(mistake -> Phrase.quoted("    " + mistake))
                    .toList();
        }
    }
}
