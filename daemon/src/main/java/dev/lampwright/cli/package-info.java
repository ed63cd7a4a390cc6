/**
 * The command line: one class per command, each a {@link java.util.concurrent.Callable} that picocli fills and runs. A command is
 * registered in the list of subcommands of {@link dev.lampwright.cli.Lampwright}; it writes its result to standard output, lets exceptions
 * that are meant for the user pass to {@link dev.lampwright.cli.Failure}, and returns the exit status. The only place that imports picocli.
 * No other package knows this one.
 */
package dev.lampwright.cli;
