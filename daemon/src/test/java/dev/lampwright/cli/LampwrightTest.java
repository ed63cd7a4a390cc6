package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.desk.Ask;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.UsageMessageSpec;

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

    /** Picocli treats them as that, and warns about others. Source: its manual, "Usage Help with Styles and Formatting". */
    @Test
    void descriptionsAreFormats() {
        for (CommandLine command : Lampwright.commandLine().getSubcommands().values()) {
            for (String line : command.getCommandSpec().usageMessage().description()) {
                assertDoesNotThrow(() -> line.formatted(), line);
            }
        }
    }

    @Test
    void helpListsACommandALine() {
        List<String> lines = Run.of("--help").out().lines().toList();
        int first = lines.indexOf("Commands:") + 1;
        for (String name : Lampwright.commandLine().getSubcommands().keySet()) {
            String line = lines.get(first++);
            assertTrue(line.matches("  " + name + " +[A-Z].*\\."), line);
        }
        assertEquals("", lines.get(first).strip(), String.join("\n", lines));
    }

    /** A terminal of the usual size shows all of it, and what a command's own help adds fits another page. */
    @Test
    void helpComesInTwoSizes() {
        List<String> lines = Run.of("--help").out().lines().toList();
        assertTrue(lines.size() <= 24, String.join("\n", lines));
        lines.forEach(line -> assertTrue(line.length() <= 80, line));
        Lampwright.commandLine().getSubcommands().forEach((name, command) -> {
            UsageMessageSpec usage = command.getCommandSpec().usageMessage();
            String longer = String.join(" ", usage.description());
            assertTrue(longer.length() > usage.header()[0].length(), name + " says no more in its own help: " + longer);
            assertTrue(command.getUsageMessage().contains("Exit status:"), name);
        });
    }

    @Test
    void helpOfTellListsWhatCanBeAskedFor() {
        String help = Run.of("tell", "--help").out();
        for (Ask ask : Ask.values()) {
            assertTrue(help.contains("  " + ask.example()), help);
            assertTrue(help.contains(ask.help()), help);
        }
        String completion = AutoComplete.bash("lampwright", Lampwright.commandLine());
        assertTrue(completion.contains("\"" + String.join("\" \"", Ask.words()) + "\" \"status\""), completion);
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
        assertWrong("lampwright: unknown argument chek, did you mean check or shelf?; see lampwright --help", "chek");
        assertWrong("lampwright check: Missing required parameter: 'FILE'; see lampwright check --help", "check");
        assertWrong(
                "lampwright check: unknown argument --jsn, did you mean --json?; see lampwright check --help",
                "check",
                "--jsn",
                "a.toml");
        assertWrong(
                "lampwright check: unknown argument b.toml; see lampwright check --help", "check", "a.toml", "b.toml");
    }

    private static void assertWrong(String line, String... args) {
        Run run = Run.of(args);
        assertEquals(line + System.lineSeparator(), run.err());
        assertEquals("", run.out());
        assertEquals(2, run.status());
    }

    /** A command with a bug. */
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
