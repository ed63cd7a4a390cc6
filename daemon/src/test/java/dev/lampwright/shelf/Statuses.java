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

/** Statuses as daemons write them. */
public final class Statuses {
    /** When they are written, unless a time is given. */
    public static final Instant AT = Instant.parse("2026-11-27T10:00:00Z");

    private Statuses() {}

    /** One of a rig that does something, with 600 s left. */
    public static byte[] of(String rig, PrinterState state, AlarmState alarm, String run, Instant at) {
        return of(rig, state, alarm, run, at, 600);
    }

    /** One of a rig that does something. */
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

    /** One of a rig in good order. */
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
