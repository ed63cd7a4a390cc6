package dev.lampwright.shelf;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.desk.AskedFor;
import dev.lampwright.desk.Report;
import dev.lampwright.desk.Signature;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.printer.PrinterState;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/** Statuses as daemons publish them. */
public final class Statuses {
    /** When they are published, unless a time is given. */
    public static final Instant AT = Instant.parse("2026-11-27T10:00:00Z");

    private Statuses() {}

    /** A rig that is busy, with 600 s left. */
    public static byte[] of(String rig, PrinterState state, AlarmState alarm, String run, Instant at) {
        return of(rig, state, alarm, run, at, 600);
    }

    /** A rig in a given state. */
    public static byte[] of(String rig, PrinterState state, AlarmState alarm, String run, Instant at, double left) {
        String fault = alarm == AlarmState.NORMAL ? "" : "nozzle heater does not get hot";
        Report report = new Report(
                "1.2",
                List.of(new Report.Printer(state, "", alarm, fault)),
                new Report.Light(state.word(), 1, false, new StripCurrent(320, 1500)),
                new Report.Lines("lit", "", "connected"),
                60,
                Map.of("job.progress", 0.42, "job.left_s", left),
                Map.of(),
                AskedFor.NOTHING);
        return bytes(report.json(
                new Signature("shed", rig, run), new Report.Sight(at, "http://shed:7118/", "ff8000000000")));
    }

    /**
     * One of a rig whose strip shows several printers: birch has a fault, alder prints with 600 s left, rowan prints with 120 s left, and hazel
     * heats up.
     */
    public static byte[] ofSeveral(String rig, Instant at) {
        return bytes(reportOfSeveral()
                .json(new Signature("shed", rig, "a1"), new Report.Sight(at, "http://shed:7118/", "ff8000000000")));
    }

    /** What such a rig's daemon reports. */
    static Report reportOfSeveral() {
        return new Report(
                "1.2",
                List.of(
                        printer("alder", PrinterState.PRINTING, AlarmState.NORMAL, "", 0.42),
                        printer("birch", PrinterState.FAULT, AlarmState.ALERT, "door open", 0.1),
                        printer("hazel", PrinterState.WARMING, AlarmState.NORMAL, "", Double.NaN),
                        printer("rowan", PrinterState.PRINTING, AlarmState.NORMAL, "", 0.9)),
                new Report.Light("fault", 1, false, new StripCurrent(320, 1500)),
                new Report.Lines("lit", "", "connected"),
                60,
                Map.of(
                        "alder.job.left_s", 600.0,
                        "rowan.job.left_s", 120.0,
                        "hazel.bed.heat", 0.5,
                        "hazel.nozzle.heat", 0.7,
                        "hazel.nozzle.ready_s", 45.0,
                        "alder.job.progress", 0.42,
                        "rowan.job.progress", 0.9),
                Map.of(),
                AskedFor.NOTHING);
    }

    private static Report.Printer printer(
            String name, PrinterState state, AlarmState alarm, String fault, double progress) {
        return new Report.Printer(name, state, "", alarm, fault, state.word(), progress);
    }

    /** A rig without any trouble. */
    public static byte[] of(String rig, PrinterState state) {
        return of(rig, state, AlarmState.NORMAL, "a1", AT);
    }

    /** What replaces it once the rig is gone. */
    public static byte[] gone(String rig, String why) {
        return bytes(Report.gone("1.2", why, new Signature("shed", rig, "a1")));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
