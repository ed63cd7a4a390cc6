package dev.lampwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.ColourDepth;
import dev.lampwright.history.Account;
import dev.lampwright.history.Acknowledgement;
import dev.lampwright.history.JobEnd;
import dev.lampwright.history.PastFault;
import dev.lampwright.history.PastJob;
import dev.lampwright.history.Stamp;
import dev.lampwright.history.StateSpan;
import dev.lampwright.printer.PrinterState;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HistoryLinesTest {
    private static final Instant NOON = Instant.parse("2026-11-27T12:00:00Z");

    private static Stamp at(Duration afterNoon) {
        return new Stamp(NOON.plus(afterNoon).toEpochMilli(), false);
    }

    private static Stamp hours(double hours) {
        return at(Duration.ofSeconds(Math.round(hours * 3600)));
    }

    private static PastJob job(
            double from, double to, boolean beganUnseen, boolean endUnseen, JobEnd end, double progress) {
        return new PastJob(hours(from), beganUnseen, hours(to), endUnseen, end, PrinterState.PRINTING, progress, 0);
    }

    @Test
    void jobsAreATable() {
        assertEquals(
                List.of(
                        "  began             took                ended",
                        "  2026-11-24 13:00  3 d 00 h            done",
                        "  2026-11-27 13:00  at most 1 h 30 min  done, its end was not seen",
                        "  2026-11-27 13:00  about 1 h 00 min    stopped at 42 %",
                        "  2026-11-27 14:00  at least 36 min     not seen to its end, last seen at 42 %",
                        "  2026-11-27 14:00  45 s                ended at 97 %, the printer did not report how",
                        "  2026-11-27 15:00  36 min              fault",
                        "  2026-11-27 15:00  2 h 00 min so far   printing at 7 %"),
                new HistoryLines(ZoneId.of("Europe/Madrid"))
                        .jobs(List.of(
                                job(-72, 0, false, false, JobEnd.DONE, 1),
                                job(0, 1.5, false, true, JobEnd.DONE, Double.NaN),
                                job(0, 1, true, true, JobEnd.STOPPED, 0.42),
                                job(1, 1.6, false, true, JobEnd.UNSEEN, 0.42),
                                job(1, 1.0125, false, false, JobEnd.UNTOLD, 0.97),
                                job(2, 2.6, false, false, JobEnd.FAULT, Double.NaN),
                                job(2, 4, false, false, JobEnd.RUNNING, 0.07))));
    }

    @Test
    void faultsAreATable() {
        Acknowledgement ada = new Acknowledgement(hours(0.1), "page", "192.0.2.7", "ada");
        assertEquals(
                List.of(
                        "  began             lasted   acknowledged                              the printer's words",
                        "  2026-11-27 12:00  12 min   2026-11-27 12:06 ada (page at 192.0.2.7)  bed too cold",
                        "  2026-11-27 13:00  ongoing  by nobody                                 none"),
                new HistoryLines(ZoneOffset.UTC)
                        .faults(List.of(
                                new PastFault(
                                        hours(0), "bed too cold", Optional.of(hours(0.2)), false, Optional.of(ada)),
                                new PastFault(hours(1), "", Optional.empty(), false, Optional.empty()))));
        assertEquals(List.of("  none"), new HistoryLines(ZoneOffset.UTC).faults(List.of()));
        assertEquals(List.of("  none"), new HistoryLines(ZoneOffset.UTC).jobs(List.of()));
    }

    @ParameterizedTest
    @CsvSource({"0, 0 s", "59, 59 s", "60, 1 min", "3599, 59 min", "3600, 1 h 00 min", "90000, 1 d 01 h"})
    void timesAreSaidInTwoUnits(long seconds, String words) {
        assertEquals(words, HistoryLines.duration(Duration.ofSeconds(seconds)));
    }

    private static StateSpan span(PrinterState state, double from, double to) {
        return new StateSpan(state, hours(from), hours(to));
    }

    private static List<String> timeline(ColourDepth depth, ZoneId zone, int columns, StateSpan... spans) {
        Map<PrinterState, String> colours = new EnumMap<>(PrinterState.class);
        for (PrinterState state : PrinterState.values()) {
            colours.put(state, state == PrinterState.PRINTING ? "#2e8b57" : "#102030");
        }
        Account account = new Account(NOON, List.of(), List.of(), List.of(spans), List.of());
        return new StateRibbon(account, NOON.minus(Duration.ofHours(24)), zone, colours, depth, columns).lines();
    }

    private static final StateSpan[] DAY = {
        span(PrinterState.IDLE, -30, -20),
        span(PrinterState.PRINTING, -20, -10),
        span(PrinterState.FAULT, -10, -9.99),
        span(PrinterState.HELD, -9.99, -9),
        span(PrinterState.STOPPED, -9, -8),
        span(PrinterState.SILENT, -4, 0)
    };

    @Test
    void theTimelineHasALetterForEachCell() {
        assertEquals(
                List.of(
                        "  12:00   16:00   20:00   27 Nov  04:00   08:00",
                        "  iiiiiiiippppppppppppppppppppFhss        ........",
                        "  . silent   i idle   p printing   h held   s stopped   F fault   blank: lampwright did not run"),
                timeline(ColourDepth.PLAIN, ZoneOffset.UTC, 50, DAY));
    }

    @Test
    void itsColoursAreThoseOfTheLooks() {
        List<String> lines = timeline(ColourDepth.FULL, ZoneOffset.UTC, 50, DAY);
        assertEquals(4, lines.size());
        assertTrue(lines.get(1).contains("\u001b[38;2;46;139;87m" + "█".repeat(20)), lines.get(1));
        assertTrue(lines.get(1).endsWith("\u001b[0m"));
        assertEquals("  i       p                   Fhs         .", lines.get(2));
        assertEquals(
                48, lines.get(1).replaceAll("\u001b\\[[0-9;]*m", "").strip().length());
    }

    /** On 25 October 2026 there are 25 hours in Madrid: the hour from 2 to 3 appears twice. */
    @Test
    void anHourThatIsThereTwiceIsNotLost() {
        Account account = new Account(
                Instant.parse("2026-10-25T11:00:00Z"),
                List.of(),
                List.of(),
                List.of(new StateSpan(
                        PrinterState.PRINTING,
                        new Stamp(Instant.parse("2026-10-24T11:00:00Z").toEpochMilli(), false),
                        new Stamp(Instant.parse("2026-10-25T11:00:00Z").toEpochMilli(), false))),
                List.of());
        List<String> lines = new StateRibbon(
                        account,
                        Instant.parse("2026-10-24T22:00:00Z"),
                        ZoneId.of("Europe/Madrid"),
                        Map.of(),
                        ColourDepth.PLAIN,
                        106)
                .lines();
        assertEquals("  " + "p".repeat(104), lines.get(1));
        assertTrue(lines.get(0).startsWith("  25 Oct  01:00   02:00   02:00   03:00   "), lines.get(0));
    }

    @Test
    void withNothingKeptItIsBlank() {
        List<String> lines = timeline(ColourDepth.INDEXED, ZoneOffset.UTC, 50);
        assertFalse(lines.get(1).contains("█"));
        assertEquals("  blank: lampwright did not run", lines.get(3));
    }
}
