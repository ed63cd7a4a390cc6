package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.link.LineException;
import java.io.IOException;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** How a failed command reports it: in lines on standard error that say what, where and what to do. */
final class Failure {
    private Failure() {}

    /**
     * Reports an exception.
     *
     * @param e the exception that a command has thrown
     * @param command the command
     * @param parsed its arguments
     * @return exit status 1
     * @throws Exception {@code e} itself, with its stack trace for developers, if it is not meant for the user
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
