package dev.lampwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** What Prometheus itself says about rules and metrics, through its {@code promtool}. Needs the Debian package {@code prometheus}. */
public final class Promtool {
    private static final String PACKAGE = "prometheus";

    private Promtool() {}

    /**
     * Checks a file of rules.
     *
     * @param file the rules
     * @return its output
     * @throws AssertionError if anything is wrong; the message says what
     */
    public static String checkRules(Path file) {
        return Tool.run(List.of("promtool", "check", "rules", file.toString()), PACKAGE);
    }

    /**
     * Runs the unit tests of rules.
     *
     * @param file the tests; the rules that they name are in the same folder
     * @return its output
     * @throws AssertionError if a test fails; the message says which
     */
    public static String testRules(Path file) {
        return Tool.run(List.of("promtool", "test", "rules", file.toString()), PACKAGE);
    }

    /**
     * Checks metrics as scraped by a server.
     *
     * @param folder for a temporary file
     * @param metrics the text
     * @return its output; empty if everything is right
     * @throws AssertionError if they cannot be read, or it finds anything to complain about
     */
    public static String checkMetrics(Path folder, String metrics) {
        try {
            Path file = Files.writeString(folder.resolve("metrics"), metrics);
            return Tool.run(List.of("sh", "-c", "promtool check metrics < " + file), PACKAGE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
