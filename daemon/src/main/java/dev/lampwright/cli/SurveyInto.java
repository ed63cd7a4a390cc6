package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.PrinterLight;
import dev.lampwright.file.EditedFile;
import dev.lampwright.file.LineChanges;
import dev.lampwright.file.StandardStream;
import dev.lampwright.tool.survey.PrinterMerge;
import dev.lampwright.tool.survey.Proposal;
import dev.lampwright.tool.survey.ProposedConfig;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.ExitCode;

/** A configuration into which the findings of a survey are merged. */
final class SurveyInto {
    private final Path file;
    private final String name;
    private final boolean yes;
    private final PrintWriter out;
    private final EditedFile edited;

    /**
     * Reads the file.
     *
     * @param file its path
     * @param name which printer of the file; empty for the only one, which has no name
     * @param yes whether to write without asking
     * @param out where the change is shown
     * @throws IOException if it cannot be read, or has no such printer
     * @throws ConfigException if it is not valid: it would not be after the change either
     */
    SurveyInto(Path file, String name, boolean yes, PrintWriter out) throws IOException, ConfigException {
        this.file = file;
        this.name = name;
        this.yes = yes;
        this.out = out;
        edited = EditedFile.read(file);
        requirePrinter(ConfigFile.read(edited.text(), file));
    }

    private void requirePrinter(Config config) throws IOException {
        List<String> names =
                config.light().printers().stream().map(PrinterLight::name).toList();
        if (!config.light().isNamed() && !name.isEmpty()) {
            throw new IOException(file + ": has one printer without a name; leave --as out");
        }
        if (config.light().isNamed() && !names.contains(name)) {
            throw new IOException(file + ": "
                    + (name.isEmpty() ? "gives its printers names" : "has no printer " + name)
                    + "; choose one of them with --as: " + String.join(", ", names));
        }
    }

    /**
     * Shows what would change, asks, and writes.
     *
     * @param proposal what was found, must be {@linkplain ProposedConfig#isEnough enough}
     * @return the exit status
     * @throws IOException if it cannot be written, or would not be valid
     */
    int take(Proposal proposal) throws IOException {
        String sections = ProposedConfig.printerSections(proposal);
        String text = name.isEmpty()
                ? PrinterMerge.into(edited.text(), sections)
                : PrinterMerge.into(edited.text(), sections, name);
        List<String> changes = LineChanges.of(file.toString(), edited.text(), text);
        if (changes.isEmpty()) {
            out.println(file + ": already has all of that; nothing to write");
            return ExitCode.OK;
        }
        out.println();
        changes.forEach(out::println);
        out.println();
        requireRight(text);
        if (!yes && !wanted()) {
            out.println(file + ": nothing written" + (isTerminal() ? "" : "; add --yes to write it"));
            return isTerminal() ? ExitCode.OK : ExitCode.SOFTWARE;
        }
        Path old = edited.replace(text);
        out.println(file + ": written; the old version is in " + old + "; check it with: lampwright check " + file);
        return ExitCode.OK;
    }

    private void requireRight(String text) throws IOException {
        try {
            ConfigFile.read(text, file);
        } catch (ConfigException e) {
            throw new IOException(
                    "what was found does not fit the rest of the file, which stays unchanged:\n" + e.getMessage(), e);
        }
    }

    private static boolean isTerminal() {
        return StandardStream.isTerminal(0) && StandardStream.isTerminal(StandardStream.OUTPUT);
    }

    private boolean wanted() throws IOException {
        if (!isTerminal()) {
            return false;
        }
        out.print("Write this to " + file + "? (y = yes, anything else = no) ");
        out.flush();
        String answer = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset())).readLine();
        return answer != null && List.of("y", "yes").contains(answer.strip().toLowerCase(Locale.ROOT));
    }
}
