package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.printer.PrinterState;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ReportTest {
    private static Report report(PrinterState state, String silence, String faultText, int milliamps, double pace) {
        Map<String, Double> signals = new LinkedHashMap<>();
        signals.put("bed.heat", 0.12345);
        signals.put("job.progress", Double.NaN);
        return new Report(
                "1.2",
                new Report.Printer(state, silence, AlarmState.ALERT, faultText),
                new Report.Light("fault", 0.5, false, new StripCurrent(milliamps, 1500)),
                new Report.Lines("lit", "", "connected"),
                pace,
                signals,
                Map.of(),
                AskedFor.NOTHING);
    }

    @Test
    void whatIsNotKnownIsLeftOut() {
        assertEquals(
                "{\"online\":true,\"version\":\"1.2\",\"state\":\"fault\",\"alarm\":\"alert\",\"fault_text\":\"door open\","
                        + "\"look\":\"fault\",\"brightness\":0.5,\"quiet\":false,\"strip_mA\":320,\"ceiling_mA\":1500,"
                        + "\"link\":\"lit\",\"broker\":\"connected\",\"asked\":[],\"signals\":{\"bed.heat\":0.123}}",
                report(PrinterState.FAULT, "", "door open", 320, Double.NaN).json());
    }

    @Test
    void unitsOfTheUsersOwnReadingsAreNextToTheSignals() {
        Report before = report(PrinterState.IDLE, "", "", 320, 60);
        Report report = new Report(
                before.version(),
                before.printer(),
                before.light(),
                before.lines(),
                before.framesPerSecond(),
                Map.of("print_speed", 120.0),
                Map.of("print_speed", "percent"),
                before.asked());
        String both = "\"signals\":{\"print_speed\":120},\"units\":{\"print_speed\":\"percent\"}}";
        assertTrue(report.json().endsWith(both), report.json());
        assertTrue(
                report.withExactSignals().text().endsWith(both.replace("120", "120.0")),
                report.withExactSignals().text());
    }

    @Test
    void numbersHaveNoExponent() {
        String json = report(PrinterState.IDLE, "", "", 320, 50).json();
        assertTrue(json.contains("\"frames_per_s\":50,"), json);
    }

    @Test
    void theCauseOfTheControllersStartIsNextToTheLink() {
        Report report = report(PrinterState.IDLE, "", "", 320, 60);
        Report hung = new Report(
                report.version(),
                report.printer(),
                report.light(),
                new Report.Lines("lit", "watchdog", "connected"),
                report.framesPerSecond(),
                report.signals(),
                report.units(),
                report.asked());
        assertTrue(
                hung.json().contains("\"link\":\"lit\",\"controller_last_reset\":\"watchdog\",\"broker\":"),
                hung.json());
        assertTrue(hung.differsInWord(report));
    }

    @Test
    void whatIsAskedForIsToldAtOnceAndItsTimeLeftIsNot() {
        Report report = report(PrinterState.IDLE, "", "", 320, 60);
        StandingWishes standing = StandingWishes.NONE.with(
                Aim.of(Ask.LOOK),
                Setting.of("done"),
                new Manner(End.at(Instant.parse("2026-11-25T12:01:00Z")), Double.NaN, ""));
        Report asked = asking(report, standing, Instant.parse("2026-11-25T12:00:00Z"));
        assertTrue(asked.differsInWord(report));
        assertFalse(asked.differsInWord(asking(report, standing, Instant.parse("2026-11-25T12:00:30Z"))));
        assertTrue(
                asked.json()
                        .contains(
                                "\"asked\":[{\"ask\":\"look\",\"value\":\"done\",\"until\":\"2026-11-25T12:01:00Z\",\"left_s\":60}]"),
                asked.json());
    }

    private static Report asking(Report report, StandingWishes standing, Instant wall) {
        return new Report(
                report.version(),
                report.printer(),
                report.light(),
                report.lines(),
                report.framesPerSecond(),
                report.signals(),
                report.units(),
                AskedFor.of(standing, new Now(0, wall)));
    }

    @Test
    void goneIsToldWithWhy() {
        assertEquals("{\"online\":false,\"why\":\"lost\",\"version\":\"1.2\"}", Report.gone("1.2", "lost"));
    }

    @Test
    void numbersThatChangeAllTheTimeAreNotToldAtOnce() {
        Report report = report(PrinterState.FAULT, "", "", 320, 60);
        assertFalse(report.differsInWord(report(PrinterState.FAULT, "", "", 321, 59.9)));
        assertTrue(report.differsInWord(report(PrinterState.IDLE, "", "", 320, 60)));
        assertTrue(report.differsInWord(report(PrinterState.FAULT, "last will", "", 320, 60)));
        assertTrue(report.differsInWord(report(PrinterState.FAULT, "", "door open", 320, 60)));
    }
}
