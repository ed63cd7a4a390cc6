package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.desk.AskedFor;
import dev.lampwright.desk.Desk;
import dev.lampwright.desk.DeskSettings;
import dev.lampwright.desk.KnownLooks;
import dev.lampwright.desk.Report;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.upkeep.Hands;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class ReporterTest {
    private static final long STEP = TimeUnit.MILLISECONDS.toNanos(200);

    private final List<Long> told = new ArrayList<>();
    private PrinterState state = PrinterState.IDLE;
    private long nanos;
    private int wholeReports;
    private final Reporter reporter = new Reporter(
            desk(), this::report, this::wholeReport, report -> told.add(nanos / STEP), () -> nanos, Hands.ofItsOwn());

    private static Desk desk() {
        return new Desk(
                DeskSettings.USUAL,
                new Fitting(4, Map.of("strip", Zone.run(0, 3)), List.of()),
                new KnownLooks(Set.of("idle"), Set.of()),
                new Desk.Clocks(System::nanoTime, InstantSource.system()),
                () -> Desk.Alarm.NONE,
                wishes -> {});
    }

    /** Its numbers change all the time. */
    private Report report() {
        return new Report(
                "1.2",
                List.of(new Report.Printer(state, "", AlarmState.NORMAL, "")),
                new Report.Light("idle", 1, false, new StripCurrent((int) (nanos / STEP), 1500)),
                new Report.Lines("lit", "", "connected"),
                60,
                Map.of(),
                Map.of(),
                AskedFor.NOTHING);
    }

    private Report wholeReport() {
        wholeReports++;
        return report();
    }

    private void lookUntil(int step) {
        for (; nanos < step * STEP; nanos += STEP) {
            reporter.look();
        }
    }

    @Test
    void newsIsToldAtOnceThenOnceMoreForTheLightThenEveryFiveSeconds() {
        lookUntil(50);
        assertEquals(List.of(0L, 10L, 35L), told);
        told.clear();
        state = PrinterState.PRINTING;
        lookUntil(101);
        assertEquals(List.of(50L, 60L, 85L), told);
        assertEquals(6, wholeReports, "only what is published is put together completely");
    }
}
