package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Child;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The demo, for somebody who has neither hardware nor a broker. */
@Timeout(60)
class DemoIT {
    private static final Pattern LAST_LINE = Pattern.compile("demo: shown ([a-z ]+); .*\\b(\\d+) acknowledged, "
            + "(\\d+) dimmed by the controller, (\\d+) over the ceiling;.*");

    /** The first whole job takes 29 s of its own time: heat-up, print, fault, wait, print, done. */
    @Test
    void showsAWholeJob() throws IOException, InterruptedException {
        Child demo = Child.run(
                RunningDaemon.command(List.of(), "demo", "--seconds", "12", "--speed", "4", "--colours", "plain"));
        assertEquals(0, demo.status(), demo.output());
        List<String> lines = demo.output().lines().toList();
        Matcher last = LAST_LINE.matcher(lines.get(lines.size() - 1));
        assertTrue(last.matches(), demo.output());
        assertTrue(
                Arrays.asList(last.group(1).split(" ", -1))
                        .containsAll(List.of("idle", "warming", "printing", "held", "done", "fault")),
                demo.output());
        assertTrue(Integer.parseInt(last.group(2)) > 0, demo.output());
        assertEquals(0, Integer.parseInt(last.group(3)), demo.output());
        assertEquals(0, Integer.parseInt(last.group(4)), demo.output());
        assertFalse(lines.stream().anyMatch(line -> line.contains("WARN") && line.contains("broker")), demo.output());
        for (String line : lines) {
            Matcher rate = Pattern.compile(" ([0-9.]+) frames/s").matcher(line);
            assertTrue(!rate.find() || Double.parseDouble(rate.group(1)) < 75, line);
        }
    }
}
