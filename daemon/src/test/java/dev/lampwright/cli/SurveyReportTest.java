package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.tool.survey.Survey;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SurveyReportTest {
    private static final long SECOND = 1_000_000_000L;
    private static final String LINES = """
            waiting for the broker
            10 s of 60 s: 1 message, 2 values
            broker mqtt://alder: lost the connection once
            20 s of 60 s: 1 message, 2 values
            """;

    private final StringWriter text = new StringWriter();
    private final Survey survey = new Survey();
    private Optional<String> trouble = Optional.empty();

    @Test
    void saysEveryTenSecondsHowItGoesOn() {
        SurveyReport report = new SurveyReport(new PrintWriter(text), Duration.ofSeconds(60), () -> trouble);
        long start = System.nanoTime();
        report.look(survey, false, start + 11 * SECOND);
        survey.hear("shop/alder", "{\"a\":1,\"b\":2}".getBytes(StandardCharsets.UTF_8), 0);
        long in = start + 12 * SECOND;
        report.look(survey, true, in);
        report.look(survey, true, in + 9 * SECOND);
        report.look(survey, true, in + 10 * SECOND);
        trouble = Optional.of("broker mqtt://alder: lost the connection once");
        report.look(survey, true, in + 11 * SECOND);
        report.look(survey, true, in + 12 * SECOND);
        report.look(survey, true, in + 20 * SECOND);
        assertEquals(LINES, text.toString().replace(System.lineSeparator(), "\n"));
    }
}
