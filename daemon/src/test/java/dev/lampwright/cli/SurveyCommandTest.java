package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SurveyCommandTest {
    private static final String BROKER = "mqtt://127.0.0.1:1";

    @TempDir
    private Path folder;

    private static void assertWrong(String beginning, String... args) {
        Run run = Run.of(args);
        assertEquals(2, run.status(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().startsWith("lampwright survey: " + beginning), run.err());
    }

    private static void assertFails(String beginning, String... args) {
        Run run = Run.of(args);
        assertEquals(1, run.status(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().startsWith(beginning), run.err());
        assertEquals("", run.out());
    }

    @Test
    void calledWrongly() {
        assertWrong("needs one of --broker and --config; ", "survey");
        assertWrong("needs one of --broker and --config; ", "survey", "--broker", BROKER, "--config", "a.toml");
        assertWrong(
                "user name, password and certificates go with --broker; ",
                "survey",
                "--config",
                "a.toml",
                "--username",
                "lamp");
        assertWrong("--seconds is 0.0; ", "survey", "--broker", BROKER, "--seconds", "0");
        assertWrong("--seconds is NaN; ", "survey", "--broker", BROKER, "--seconds", "NaN");
        assertWrong(
                "--topics is not an MQTT topic filter: a wildcard stands alone",
                "survey",
                "--broker",
                BROKER,
                "--topics",
                "a#");
        assertWrong("--as goes with --write and --into", "survey", "--broker", BROKER, "--as", "birch");
    }

    @Test
    void ofAFileThatNamesItsPrintersOneHasToBeChosen() throws IOException {
        Path two = Files.writeString(folder.resolve("two.toml"), """
                broker.url = "mqtt://127.0.0.1"
                controller.port = "/dev/ttyACM0"
                strip.pixels = 30
                printers.alder.readings.job.progress.topic = "shop/alder/job"
                """);
        assertFails(
                two + ": gives its printers names; choose one of them with --as: alder",
                "survey",
                "--into",
                two.toString());
        assertFails(
                two + ": has no printer birch; choose one of them with --as: alder",
                "survey",
                "--into",
                two.toString(),
                "--as",
                "birch");
        Path one = Files.writeString(folder.resolve("one.toml"), """
                broker.url = "mqtt://127.0.0.1"
                controller.port = "/dev/ttyACM0"
                strip.pixels = 30
                printer.readings.job.progress.topic = "shop/alder/job"
                """);
        assertFails(
                one + ": has one printer without a name; leave --as out",
                "survey",
                "--into",
                one.toString(),
                "--as",
                "alder");
    }

    @Test
    void whatIsWrongWithTheBrokerIsSaid() {
        assertFails("broker: url: does not begin with mqtt://", "survey", "--broker", "http://alder");
        assertFails("broker: password_file: needs username", "survey", "--broker", BROKER, "--password-file", "p");
        String nowhere = folder.resolve("none.toml").toString();
        assertFails(nowhere + ": there is no such file; ", "survey", "--config", nowhere);
    }

    @Test
    void aFileThatIsThereIsNotReplaced() throws IOException {
        Path file = Files.writeString(folder.resolve("alder.toml"), "mine");
        assertFails(file + ": already exists; ", "survey", "--broker", BROKER, "--write", file.toString());
        String nowhere = folder.resolve("no").resolve("a.toml").toString();
        assertFails(nowhere + ": its folder does not exist; ", "survey", "--broker", BROKER, "--write", nowhere);
        assertFails(folder + ": is a folder; ", "survey", "--broker", BROKER, "--write", folder.toString());
        assertEquals("mine", Files.readString(file));
    }

    @Test
    void aFileToPutThePrinterIntoMustBeRight() throws IOException {
        Path file = Files.writeString(folder.resolve("alder.toml"), "broker.url = \"" + BROKER + "\"\npixels =\n");
        assertFails(file + ":2: column 9: the value is missing; ", "survey", "--into", file.toString());
        String nowhere = folder.resolve("none.toml").toString();
        assertFails(nowhere + ": there is no such file; ", "survey", "--into", nowhere);
        assertWrong("--write and --into do not go together; ", "survey", "--into", nowhere, "--write", nowhere);
    }

    @Test
    void aFileIsWrittenWholeOrNotAtAll() throws IOException {
        Path file = folder.resolve("alder.toml");
        NewFile.write(file, "one", false);
        NewFile.write(file, "two", true);
        assertEquals("two", Files.readString(file));
        try (var files = Files.list(folder)) {
            assertEquals(1, files.count(), "nothing else is left");
        }
        IOException e = assertThrows(
                IOException.class, () -> NewFile.write(folder.resolve("no").resolve("a.toml"), "x", false));
        assertTrue(
                e.getMessage().endsWith("its folder does not exist; give the path of a file to write"), e.getMessage());
    }
}
