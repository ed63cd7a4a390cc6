package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.printer.PrinterState;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ReportTest {
    private static final Signature SIGNATURE = new Signature("shed", "alder", "0f12ab");
    private static final Report.Sight SIGHT =
            new Report.Sight(Instant.parse("2026-11-27T10:00:00.9Z"), "http://shed:7118/", "ff8000000000");

    private static String json(Report report) {
        return report.json(SIGNATURE, SIGHT);
    }

    private static Report report(PrinterState state, String silence, String faultText, int milliamps, double pace) {
        Map<String, Double> signals = new LinkedHashMap<>();
        signals.put("bed.heat", 0.12345);
        signals.put("job.progress", Double.NaN);
        return new Report(
                "1.2",
                List.of(new Report.Printer(state, silence, AlarmState.ALERT, faultText)),
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
                "{\"program\":\"lampwright\",\"online\":true,\"version\":\"1.2\",\"host\":\"shed\",\"rig\":\"alder\","
                        + "\"run\":\"0f12ab\",\"at\":\"2026-11-27T10:00:00Z\",\"page\":\"http://shed:7118/\","
                        + "\"strip_rgb\":\"ff8000000000\",\"state\":\"fault\",\"alarm\":\"alert\",\"fault_text\":\"door open\","
                        + "\"look\":\"fault\",\"brightness\":0.5,\"quiet\":false,\"strip_mA\":320,\"ceiling_mA\":1500,"
                        + "\"link\":\"lit\",\"broker\":\"connected\",\"asked\":[],\"signals\":{\"bed.heat\":0.123}}",
                json(report(PrinterState.FAULT, "", "door open", 320, Double.NaN)));
    }

    @Test
    void unitsOfTheUsersOwnReadingsAreNextToTheSignals() {
        Report before = report(PrinterState.IDLE, "", "", 320, 60);
        Report report = new Report(
                before.version(),
                before.printers(),
                before.light(),
                before.lines(),
                before.framesPerSecond(),
                Map.of("print_speed", 120.0),
                Map.of("print_speed", "percent"),
                before.asked());
        String both = "\"signals\":{\"print_speed\":120},\"units\":{\"print_speed\":\"percent\"}}";
        assertTrue(json(report).endsWith(both), json(report));
        assertTrue(
                report.withExactSignals().text().endsWith(both.replace("120", "120.0")),
                report.withExactSignals().text());
    }

    @Test
    void numbersHaveNoExponent() {
        String json = json(report(PrinterState.IDLE, "", "", 320, 50));
        assertTrue(json.contains("\"frames_per_s\":50,"), json);
    }

    @Test
    void theCauseOfTheControllersStartIsNextToTheLink() {
        Report report = report(PrinterState.IDLE, "", "", 320, 60);
        Report hung = new Report(
                report.version(),
                report.printers(),
                report.light(),
                new Report.Lines("lit", "watchdog", "connected"),
                report.framesPerSecond(),
                report.signals(),
                report.units(),
                report.asked());
        assertTrue(
                json(hung).contains("\"link\":\"lit\",\"controller_last_reset\":\"watchdog\",\"broker\":"), json(hung));
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
                json(asked)
                        .contains(
                                "\"asked\":[{\"ask\":\"look\",\"value\":\"done\",\"until\":\"2026-11-25T12:01:00Z\",\"left_s\":60}]"),
                json(asked));
    }

    private static Report asking(Report report, StandingWishes standing, Instant wall) {
        return new Report(
                report.version(),
                report.printers(),
                report.light(),
                report.lines(),
                report.framesPerSecond(),
                report.signals(),
                report.units(),
                AskedFor.of(standing, new Now(0, wall)));
    }

    @Test
    void goneIsToldWithWhy() {
        assertEquals(
                "{\"program\":\"lampwright\",\"online\":false,\"version\":\"1.2\",\"host\":\"shed\",\"rig\":\"alder\","
                        + "\"run\":\"0f12ab\",\"why\":\"lost\"}",
                Report.gone("1.2", "lost", SIGNATURE));
    }

    private static Report doing(PrinterState state, Map<String, Double> signals) {
        Report report = report(state, "", "", 320, 60);
        return new Report(
                report.version(),
                report.printers(),
                report.light(),
                report.lines(),
                report.framesPerSecond(),
                signals,
                Map.of(),
                AskedFor.NOTHING);
    }

    @Test
    void progressAndTimeLeftFollowFromWhatThePrinterDoes() {
        Map<String, Double> signals = Map.of(
                "bed.heat", 1.0,
                "nozzle.heat", 0.5,
                "chamber.heat", Double.NaN,
                "bed.ready_s", 0.0,
                "nozzle.ready_s", 42.4,
                "job.progress", 0.25,
                "job.left_s", 600.0);
        assertTrue(json(doing(PrinterState.WARMING, signals)).contains("\"progress\":0.75,\"left_s\":42,"));
        assertTrue(json(doing(PrinterState.PRINTING, signals)).contains("\"progress\":0.25,\"left_s\":600,"));
        String held = json(doing(PrinterState.HELD, signals));
        assertTrue(held.contains("\"progress\":0.25,") && !held.contains("\"left_s\""), held);
        String idle = json(doing(PrinterState.IDLE, signals));
        assertFalse(idle.contains("\"progress\"") || idle.contains("\"left_s\""), idle);
    }

    @Test
    void theLastLevelOfThePrefixIsTheRigsNameAndEachRunHasItsOwn() {
        Signature first = Signature.begun("shop/alder");
        assertEquals("alder", first.rig());
        assertEquals("lampwright", first.under("lampwright").rig());
        assertEquals(first.run(), first.under("lampwright").run());
        assertFalse(first.run().equals(Signature.begun("shop/alder").run()));
    }

    @Test
    void numbersThatChangeAllTheTimeAreNotToldAtOnce() {
        Report report = report(PrinterState.FAULT, "", "", 320, 60);
        assertFalse(report.differsInWord(report(PrinterState.FAULT, "", "", 321, 59.9)));
        assertTrue(report.differsInWord(report(PrinterState.IDLE, "", "", 320, 60)));
        assertTrue(report.differsInWord(report(PrinterState.FAULT, "last will", "", 320, 60)));
        assertTrue(report.differsInWord(report(PrinterState.FAULT, "", "door open", 320, 60)));
    }

    @Test
    void severalPrintersAreReportedByName() {
        Report one = report(PrinterState.IDLE, "", "", 320, 60);
        Report.Printer alder =
                new Report.Printer("alder", PrinterState.PRINTING, "", AlarmState.NORMAL, "", "printing", 0.4);
        Report.Printer birch =
                new Report.Printer("birch", PrinterState.IDLE, "", AlarmState.ALERT, "door open", "fault", Double.NaN);
        Report two = new Report(
                one.version(),
                List.of(alder, birch),
                one.light(),
                one.lines(),
                one.framesPerSecond(),
                one.signals(),
                one.units(),
                one.asked());
        String json = json(two);
        assertTrue(
                json.contains(
                        "\"state\":\"idle\",\"alarm\":\"alert\",\"fault_text\":\"door open\",\"printers\":{\"alder\":{\"state\":"
                                + "\"printing\",\"alarm\":\"normal\",\"look\":\"printing\",\"progress\":0.4},\"birch\":{\"state\":\"idle\","
                                + "\"alarm\":\"alert\",\"fault_text\":\"door open\",\"look\":\"fault\"}}"),
                json);
    }

    @Test
    void eachOfSeveralPrintersHasItsOwnProgressAndTimeLeft() {
        Report one = report(PrinterState.IDLE, "", "", 320, 60);
        Report.Printer alder =
                new Report.Printer("alder", PrinterState.PRINTING, "", AlarmState.NORMAL, "", "printing", 0.4);
        Report.Printer birch =
                new Report.Printer("birch", PrinterState.WARMING, "", AlarmState.NORMAL, "", "warming", Double.NaN);
        Report two = new Report(
                one.version(),
                List.of(alder, birch),
                one.light(),
                one.lines(),
                one.framesPerSecond(),
                Map.of(
                        "alder.job.progress", 0.4,
                        "alder.job.left_s", 600.4,
                        "birch.bed.heat", 0.2,
                        "birch.nozzle.heat", 0.4,
                        "birch.nozzle.ready_s", 90.0),
                one.units(),
                one.asked());
        assertEquals(0.4, two.progress(alder));
        assertEquals(0.3, two.progress(birch), 1e-9);
        assertEquals(90, two.leftSeconds(birch));
        String json = json(two);
        assertTrue(json.contains("\"look\":\"printing\",\"progress\":0.4,\"left_s\":600}"), json);
        assertTrue(json.contains("\"look\":\"warming\",\"progress\":0.3,\"left_s\":90}"), json);
    }
}
