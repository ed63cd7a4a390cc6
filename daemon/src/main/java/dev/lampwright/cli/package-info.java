/**
 * The command line: one class a command, each a {@link java.util.concurrent.Callable} that picocli fills and runs. A command is
 * made known in the list of subcommands of {@link dev.lampwright.cli.Lampwright}; it writes what was asked for to the standard
 * output, lets exceptions that are meant for the user pass to {@link dev.lampwright.cli.Failure}, and returns the exit status. The
 * only place that imports picocli. No other package knows of this one.
 */
package dev.lampwright.cli;
