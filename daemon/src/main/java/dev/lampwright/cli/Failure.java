package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.link.LineException;
import java.io.IOException;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** How a command that failed tells it: in lines on the standard error that say what, where and what to do. */
final class Failure {
    private Failure() {}

    /**
     * Tells an exception.
     *
     * @param e what a command has thrown
     * @param command the command
     * @param parsed what it was called with
     * @return exit status 1
     * @throws Exception {@code e} itself, with its stack trace for whoever fixes it, if it is not meant for the user
     */
    static int told(Exception e, CommandLine command, ParseResult parsed) throws Exception {
        PrintWriter err = command.getErr();
        if (e instanceof ConfigException wrong) {
            wrong.mistakes().forEach(err::println);
            return CommandLine.ExitCode.SOFTWARE;
        }
        if (e instanceof LineException || e instanceof IOException) {
            err.println(e.getMessage());
            return CommandLine.ExitCode.SOFTWARE;
        }
        throw e;
    }
}
