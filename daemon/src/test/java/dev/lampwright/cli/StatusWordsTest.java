package dev.lampwright.cli;

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
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class StatusWordsTest {
    private static String words(AskedFor asked) {
        Report report = new Report(
                "1.2",
                List.of(new Report.Printer(PrinterState.IDLE, "", AlarmState.NORMAL, "")),
                new Report.Light("idle", 0, false, new StripCurrent(20, 1500)),
                new Report.Lines("lit", "", "lost"),
                60,
                Map.of(),
                Map.of(),
                asked);
        return StatusWords.of(report, "", "refused the connection");
    }

    @Test
    void oneLineSaysHowItIs() {
        assertEquals(
                "idle, look idle; strip 20 of 1500 mA; controller lit; broker lost (refused the connection)",
                words(AskedFor.NOTHING));
    }

    @Test
    void whatPeopleAskedForIsInIt() {
        Desk desk = new Desk(
                DeskSettings.USUAL,
                new Fitting(4, Map.of("strip", Zone.run(0, 3)), List.of()),
                new KnownLooks(Set.of("idle"), Set.of()),
                new Desk.Clocks(System::nanoTime, InstantSource.system()),
                () -> Desk.Alarm.NONE,
                wishes -> {});
        desk.ask("lights", "{\"lights\": {\"brightness\": \"off\", \"pixels\": {\"0\": \"red\", \"1\": \"red\"}}}");
        assertEquals(
                "idle, look idle; asked for: brightness, pixels; strip 20 of 1500 mA; controller lit; broker lost (refused the"
                        + " connection)",
                words(desk.asked()));
    }
}
