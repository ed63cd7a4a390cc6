package dev.lampwright.cli;

import picocli.CommandLine.Option;

/** The option {@code --json}. */
final class JsonOption {
    @Option(names = "--json", description = "Print the answer as JSON on the standard output.")
    private boolean wanted;

    /** Whether the answer is for a program. */
    boolean wanted() {
        return wanted;
    }
}
