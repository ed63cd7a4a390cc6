package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.shelf.Shelf;
import dev.lampwright.shelf.Statuses;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShelfTableTest {
    private final Shelf shelf = new Shelf(Shelf.USUAL_LAPSE);

    private void hear(String prefix, byte[] status) {
        shelf.hear(prefix + "/status", status, false, 0, Statuses.AT);
    }

    private void hear(String rig, PrinterState state, AlarmState alarm) {
        hear("shop/" + rig, Statuses.of(rig, state, alarm, "a1", Statuses.AT));
    }

    private List<String> lines(int most) {
        return new ShelfTable(ColourDepth.PLAIN, 80).lines(shelf.rows(0), most);
    }

    @Test
    void itReadsAtAGlanceInEightyColumns() {
        hear("alder", PrinterState.PRINTING, AlarmState.NORMAL);
        hear("birch", PrinterState.FAULT, AlarmState.ALERT);
        hear("rowan", PrinterState.SILENT, AlarmState.NORMAL);
        hear("shop/oak", Statuses.gone("oak", "lost"));
        assertEquals("""
                RIG             ON          STATE          DONE        LEFT  STRIP
                birch           shed        FAULT                            @
                  nozzle heater does not get hot
                alder           shed        printing       42 %      10 min  @
                oak             shed        lost
                  the broker has lost it; look at its computer
                rowan           shed        no report                        @""", String.join("\n", lines(99)).replaceAll(" +\n", "\n").stripTrailing());
        assertTrue(lines(99).stream().allMatch(line -> line.length() <= 80));
        assertEquals(
                "4 rigs, 1 needs you, 1 at work (next ready in 10 min), 1 lost", ShelfTable.summary(shelf.rows(0)));
        assertEquals(
                "Found under shop/… (4). Looked for prefixes of up to 4 levels.", ShelfTable.places(shelf.rows(0), 4));
    }

    @Test
    void eachOfSeveralPrintersHasALine() {
        hear("shop/bench", Statuses.ofSeveral("bench", Statuses.AT));
        hear("oak", PrinterState.IDLE, AlarmState.NORMAL);
        assertEquals("""
                RIG             ON          STATE          DONE        LEFT  STRIP
                bench           shed                                         @
                  birch                     FAULT
                    door open
                  hazel                     heating        60 %        45 s
                  rowan                     printing       90 %       2 min
                  alder                     printing       42 %      10 min
                oak             shed        idle                             @""", String.join("\n", lines(99)).replaceAll(" +\n", "\n").stripTrailing());
        assertEquals("2 rigs, 1 needs you, 3 at work (next ready in 45 s)", ShelfTable.summary(shelf.rows(0)));
        assertEquals("… and 2 more; make the window taller, or use --once", lines(5).get(1));
    }

    @Test
    void whatThereIsNoRoomForIsCounted() {
        for (int i = 1; i <= 30; i++) {
            hear(
                    "p" + i,
                    i == 5 ? PrinterState.FAULT : PrinterState.IDLE,
                    i == 5 ? AlarmState.ALERT : AlarmState.NORMAL);
        }
        List<String> lines = lines(10);
        assertEquals(10, lines.size());
        assertTrue(lines.get(1).startsWith("p5 "), lines.get(1));
        assertEquals("… and 23 more; make the window taller, or use --once", lines.get(9));
        assertEquals(32, lines(32).size());
    }

    @Test
    void rigsOfOneNameAreToldApartByTheirPrefixes() {
        hear("hall/alder", Statuses.of("alder", PrinterState.IDLE));
        hear("a-long-way-off/alder", Statuses.of("alder", PrinterState.IDLE));
        List<String> lines = lines(99);
        assertTrue(lines.get(1).startsWith("…way-off/alder  "), lines.get(1));
        assertTrue(lines.get(2).startsWith("hall/alder "), lines.get(2));
        assertEquals(
                "Found under a-long-way-off/…, hall/…. Looked for prefixes of up to 1 level.",
                ShelfTable.places(shelf.rows(0), 1));
    }

    @Test
    void aDarkControllerAndTwoDaemonsOnOnePrefixHaveALine() {
        String status = new String(Statuses.of("alder", PrinterState.IDLE), StandardCharsets.UTF_8)
                .replace("\"link\":\"lit\"", "\"link\":\"down\"");
        for (String run : List.of("a1", "b2", "a1")) {
            hear(
                    "shop/alder",
                    status.replace("\"run\":\"a1\"", "\"run\":\"" + run + "\"").getBytes(StandardCharsets.UTF_8));
        }
        assertEquals(
                "  no light: the controller is down; two daemons report on shop/alder; give one …",
                lines(99).get(2));
    }

    @Test
    void whoIsLostHasNothingLeftToSay() {
        hear("alder", PrinterState.PRINTING, AlarmState.NORMAL);
        List<String> lines = new ShelfTable(ColourDepth.PLAIN, 80).lines(shelf.rows(TimeUnit.MINUTES.toNanos(12)), 99);
        assertEquals("alder           shed        lost", lines.get(1));
        assertEquals(
                "  nothing heard for 12 min; look at its computer, or at the way to its broker",
                lines.get(2).stripTrailing());
    }

    @Test
    void theStripHasItsColours() {
        hear("alder", PrinterState.IDLE, AlarmState.NORMAL);
        String line =
                new ShelfTable(ColourDepth.FULL, 80).lines(shelf.rows(0), 99).get(1);
        assertTrue(line.endsWith("\u001b[38;2;255;128;0m█\u001b[38;2;0;0;0m█\u001b[0m"), line);
    }

    @ParameterizedTest
    @CsvSource({"0,5 s", "42,40 s", "57,1 min", "600,10 min", "5940,99 min", "6000,1 h 40 min", "172800,2 days"})
    void timesAreAsPreciseAsAnybodyNeeds(double seconds, String words) {
        assertEquals(words, ShelfTable.time(seconds));
    }

    @Test
    void theTerminalTellsItsSize() {
        assertEquals(new TerminalSize(50, 132), TerminalSize.of("50 132\n"));
        assertEquals(TerminalSize.USUAL, TerminalSize.of("0 0\n"));
        assertEquals(TerminalSize.USUAL, TerminalSize.of(""));
    }

    @Test
    void nothingFoundIsSaid() {
        assertEquals("no rig reports here", ShelfTable.summary(shelf.rows(0)));
        assertEquals("Looked for prefixes of up to 4 levels.", ShelfTable.places(shelf.rows(0), 4));
    }
}
