package dev.lampwright.cli;

import dev.lampwright.testing.KeptLogLevel;
import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;

/**
 * The result of one call of {@code lampwright}.
 *
 * @param status exit status
 * @param out its standard output
 * @param err its standard error
 */
record Run(int status, String out, String err) {
    static Run of(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine line = Lampwright.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
        int status = KeptLogLevel.during(() -> line.execute(args));
        return new Run(status, out.toString(), err.toString());
    }
}
