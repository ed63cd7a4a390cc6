package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Child;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Invalid values of options and parameters are reported without a word of Java. */
class OptionValuesTest {
    private static final String TELL = "tell --broker mqtt://127.0.0.1:1 ";
    private static final String USUAL = "a whole number from 9600 to 3000000";

    private static void assertWrong(String complaint, String... args) {
        assertEquals(
                new Run(
                        2,
                        "",
                        "lampwright " + args[0] + ": " + complaint + "; see lampwright " + args[0] + " --help"
                                + System.lineSeparator()),
                Run.of(args));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "demo --seconds abc  | --seconds is abc; write a number, for instance 2.5",
                "demo --seconds 0    | --seconds is 0.0; write a number above 0",
                "demo --speed 2000   | --speed is 2000.0; write a number above 0, at most 1000",
                "survey --seconds x  | --seconds is x; write a number, for instance 2.5",
                "render --frames-per-s ten | --frames-per-s is ten; write a number, for instance 2.5",
                "check --json=a a.toml | --json is a; write true or false, or the option alone"
            })
    void numbers(String line, String complaint) {
        assertWrong(complaint, line.split(" "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "look done --for abc | --for is abc; write a number, for instance 2.5",
                "--wait 1e18 status  | --wait is 1.0E18; write a number of seconds from 0.1 to 86400",
                "--wait 0 status     | --wait is 0.0; write a number of seconds from 0.1 to 86400",
                "--wait 0.0001 status | --wait is 1.0E-4; write a number of seconds from 0.1 to 86400",
                "--wait -1 status    | --wait is -1.0; write a number of seconds from 0.1 to 86400",
                "--wait NaN status   | --wait is NaN; write a number of seconds from 0.1 to 86400",
                "--wait x status     | --wait is x; write a number, for instance 2.5"
            })
    void whatTellIsTold(String line, String complaint) {
        assertWrong(complaint, (TELL + line).split(" "));
    }

    /** The same as of {@code desk.prefix}, by MQTT 3.1.1, section 4.7. */
    @ParameterizedTest
    @ValueSource(strings = {"a/#", "+", "a/+/b", "$SYS", "/a", "a/"})
    void prefixes(String prefix) {
        assertWrong(
                "--prefix has +, # or a control character in it, or begins with $ or /, or ends with /; give the beginning"
                        + " of this printer's own topics, for instance \"lampwright/alder\"",
                (TELL + "--prefix " + prefix + " status").split(" "));
    }

    @Test
    void aNameThatIsKeptForNothing() {
        assertWrong("--by goes with acknowledge", (TELL + "--by ada quiet on").split(" "));
    }

    @Test
    void anEmptyPrefix() {
        assertWrong(
                "--prefix is empty; give the beginning of this printer's own topics, for instance \"lampwright/alder\"",
                "tell",
                "--broker",
                "mqtt://127.0.0.1:1",
                "--prefix",
                "",
                "status");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-1", "1", "9599", "3000001", "99999999999", "5e5", "fast"})
    void ratesThatNoPortHas(String baud) {
        assertWrong("--baud is " + baud + "; give " + USUAL, "ports", "--baud", baud, "/dev/null");
        assertWrong("--baud is " + baud + "; give " + USUAL, "fit", "--baud", baud, "/dev/null/a.toml");
    }

    @Test
    void anUnusualRate() {
        assertWrong(
                "--baud is 300000, which is not a usual rate; give the rate of the firmware, for instance 250000",
                "ports",
                "--baud",
                "300000");
    }

    @Test
    void paths() {
        assertWrong("FILE is empty; give the path of a file", "check", "");
        assertWrong("--write is empty; give the path of a file", "survey", "--write", "");
    }

    @Test
    void aPathThatTheLocaleHasNoLettersFor() throws IOException, InterruptedException {
        String addsAName = "LC_ALL=C exec \"$@\" \"$(printf 'dr\\303\\274cker.toml')\"";
        Child child = Child.run(List.of("sh", "-c", addsAName, "sh"), List.of(), Lampwright.class, "check");
        assertEquals(2, child.status(), child.output());
        assertEquals(1, child.output().lines().count(), child.output());
        assertTrue(child.output().startsWith("lampwright check: FILE is "), child.output());
        assertTrue(
                child.output()
                        .contains(", which has characters that paths cannot have in this locale; set another, for"
                                + " instance LC_ALL=C.UTF-8; see "),
                child.output());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "yesterday", "7", "7w", "-7d", "2026-02-30", "2026-11-27T25:00", "27.11.2026", "0001-01-01"})
    void times(String since) {
        assertWrong(
                "--since is " + since
                        + "; write a date such as 2026-11-27, with a time such as 2026-11-27T09:00, or how long"
                        + " ago, such as 90m, 12h or 7d",
                "history",
                "alder.toml",
                "--since",
                since);
    }

    @ParameterizedTest
    @CsvSource({
        "2026-11-27, 2026-11-26T23:00:00Z",
        "2026-11-27T09:30, 2026-11-27T08:30:00Z",
        "2026-11-27 09:30, 2026-11-27T08:30:00Z",
        "90m, 2026-11-27T10:30:00Z",
        "12h, 2026-11-27T00:00:00Z",
        "7d, 2026-11-20T12:00:00Z"
    })
    void timesAreLocal(String since, String instant) {
        assertEquals(
                Instant.parse(instant),
                new Since.Reader()
                        .convert(since)
                        .instant(Instant.parse("2026-11-27T12:00:00Z"), ZoneId.of("Europe/Madrid")));
    }
}
