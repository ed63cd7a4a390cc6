package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Command;

class LampwrightTest {
    @Test
    void version() {
        Run run = Run.of("--version");
        assertEquals(0, run.status());
        assertTrue(run.out().matches("lampwright \\d+\\.\\d+\\.\\d+\\S*\\R"), run.out());
        assertEquals("", run.err());
    }

    @Test
    void helpOfEveryCommandHasAnExample() {
        assertHelp(Run.of("--help"));
        Lampwright.commandLine().getSubcommands().keySet().forEach(name -> assertHelp(Run.of(name, "--help")));
    }

    private static void assertHelp(Run run) {
        assertEquals(0, run.status());
        assertTrue(run.out().startsWith("Usage: lampwright"), run.out());
        assertTrue(run.out().contains("Example: lampwright "), run.out());
        assertEquals("", run.err());
    }

    @Test
    void calledWrongly() {
        assertWrong("lampwright: Missing required subcommand; see lampwright --help");
        assertWrong("lampwright: does not know chek, did you mean check?; see lampwright --help", "chek");
        assertWrong("lampwright check: Missing required parameter: 'FILE'; see lampwright check --help", "check");
        assertWrong(
                "lampwright check: does not know --jsn, did you mean --json?; see lampwright check --help",
                "check",
                "--jsn",
                "a.toml");
        assertWrong("lampwright check: does not know b.toml; see lampwright check --help", "check", "a.toml", "b.toml");
    }

    private static void assertWrong(String line, String... args) {
        Run run = Run.of(args);
        assertEquals(line + System.lineSeparator(), run.err());
        assertEquals("", run.out());
        assertEquals(2, run.status());
    }

    /** A command with a fault of its own. */
    @Command(name = "broken")
    private static final class Broken implements Callable<Integer> {
        @Override
        public Integer call() {
            throw new IllegalStateException("a fault of the program");
        }
    }

    @Test
    void aFaultOfTheProgramKeepsItsTrace() {
        StringWriter err = new StringWriter();
        CommandLine line = Lampwright.commandLine()
                .addSubcommand(new Broken())
                .setExecutionExceptionHandler(Failure::told)
                .setErr(new PrintWriter(err));
        assertEquals(1, line.execute("broken"));
        assertTrue(err.toString().contains("IllegalStateException: a fault of the program"), err.toString());
        assertTrue(err.toString().contains("at dev.lampwright."), err.toString());
    }
}
