package dev.lampwright.cli;

import java.util.List;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The manual page of a command and its subcommands, in the macros of man(7), generated from their definitions alone. */
final class ManualPage {
    private final StringBuilder page = new StringBuilder();

    private ManualPage() {}

    /**
     * Writes a page for section 1.
     *
     * @param command the command that holds all others
     * @param version of the program, as shown in the page's footer
     * @return the page
     */
    static String of(CommandLine command, String version) {
        ManualPage manual = new ManualPage();
        manual.write(command, version);
        return manual.page.toString();
    }

    private void write(CommandLine command, String version) {
        CommandSpec spec = command.getCommandSpec();
        String name = spec.name();
        macro("TH", quoted(name.toUpperCase(Locale.ROOT)) + " 1 \"\" " + quoted(version));
        macro("SH", "NAME");
        line(name + " - " + decapitalized(spec.usageMessage().description()[0]));
        macro("SH", "SYNOPSIS");
        synopsis(command);
        macro("SH", "OPTIONS");
        spec.options().forEach(this::option);
        command.getSubcommands().values().forEach(this::subcommand);
        files();
        footer(spec);
    }

    private void subcommand(CommandLine command) {
        CommandSpec spec = command.getCommandSpec();
        if (spec.usageMessage().hidden()) {
            return;
        }
        macro("SH", quoted(spec.qualifiedName()));
        synopsis(command);
        for (String paragraph : spec.usageMessage().description()) {
            macro("PP", "");
            line(paragraph);
        }
        spec.positionalParameters().forEach(this::parameter);
        spec.options().forEach(this::option);
        exitStatus(spec);
        footer(spec);
    }

    private void synopsis(CommandLine command) {
        macro("PP", "");
        line(command.getHelp().synopsis(0).strip().replaceAll("\\s+", " "));
    }

    private void parameter(PositionalParamSpec parameter) {
        macro("TP", "");
        line("\\fI" + escaped(parameter.paramLabel()) + "\\fR", true);
        description(parameter);
    }

    private void option(OptionSpec option) {
        macro("TP", "");
        String label = option.arity().max() == 0 ? "" : "=\\fI" + escaped(option.paramLabel()) + "\\fR";
        line("\\fB" + escaped(String.join(", ", option.names())) + "\\fR" + label, true);
        description(option);
    }

    private void description(ArgSpec argument) {
        List.of(argument.description()).forEach(this::line);
    }

    private void exitStatus(CommandSpec spec) {
        if (spec.usageMessage().exitCodeList().isEmpty()) {
            return;
        }
        macro("PP", "");
        line("Exit status:");
        spec.usageMessage().exitCodeList().forEach((code, meaning) -> {
            macro("TP", "");
            line(code);
            line(meaning);
        });
    }

    private void files() {
        macro("SH", "FILES");
        entry("/etc/lampwright/lampwright.toml", "The configuration that the service lampwright reads.");
        entry(
                "/etc/lampwright/shop.toml, /etc/lampwright/rigs/NAME.toml",
                "For several printers, what it reads instead: what all rigs share, and a file for each.");
        entry("/etc/lampwright/NAME.toml", "The configuration that the service lampwright@NAME reads.");
        entry(
                "/var/lib/lampwright/NAME-*.history.jsonl",
                "Past jobs and faults, which lampwright history shows; remove it to forget them.");
        entry("/usr/share/doc/lampwright/examples/example.toml", "Every key, with a comment.");
        entry("/usr/share/doc/lampwright/handbook/index.html", "The handbook; the same as text is in index.md.");
    }

    private void entry(String term, String meaning) {
        macro("TP", "");
        line("\\fI" + escaped(term) + "\\fR", true);
        line(meaning);
    }

    private void footer(CommandSpec spec) {
        for (String text : spec.usageMessage().footer()) {
            if (!text.isBlank()) {
                macro("PP", "");
                line(text);
            }
        }
    }

    private void macro(String name, String arguments) {
        page.append('.').append(name).append(arguments.isEmpty() ? "" : " ").append(arguments);
        page.append('\n');
    }

    private void line(String text) {
        line(text, false);
    }

    /** A line of text; one that starts with a dot or an apostrophe would be read as a macro. */
    private void line(String text, boolean escapedAlready) {
        String safe = escapedAlready ? text : escaped(text);
        page.append(safe.startsWith(".") || safe.startsWith("'") ? "\\&" : "").append(safe);
        page.append('\n');
    }

    private static String escaped(String text) {
        return text.replace("%n", " ")
                .replace("%%", "%")
                .replace("\\", "\\e")
                .replace("-", "\\-")
                .replace("\n", " ");
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "") + '"';
    }

    private static String decapitalized(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1).replaceFirst("\\.$", "");
    }
}
