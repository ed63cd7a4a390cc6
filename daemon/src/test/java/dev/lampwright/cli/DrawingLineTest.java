package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class DrawingLineTest {
    private final StringWriter written = new StringWriter();
    private final AtomicLong clock = new AtomicLong(-5);
    private final DrawingLine line = new DrawingLine(new PrintWriter(written), Path.of("alder.toml"), clock::get);

    private void pass(Duration time) {
        clock.addAndGet(time.toNanos());
    }

    @Test
    void whoDoesNotWaitSeesNothing() {
        line.at(0, 2);
        pass(Duration.ofMillis(999));
        line.at(1, 2);
        line.at(2, 2);
        assertEquals("", written.toString());
    }

    @Test
    void whoWaitsSeesHowFarItIsAndInTheEndNoTraceOfIt() {
        pass(Duration.ofSeconds(1));
        line.at(9, 20);
        line.at(8, 20);
        line.at(20, 20);
        String first = "alder.toml: drawing look 10 of 20";
        String second = "alder.toml: drawing look 9 of 20";
        assertEquals(
                "\r" + first + "\r" + second + " " + "\r" + " ".repeat(second.length()) + "\r", written.toString());
    }
}
