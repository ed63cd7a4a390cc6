package dev.lampwright.history;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.printer.PrinterState;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HistoryTextTest {
    private static final Account ACCOUNT = new Account(
            Instant.parse("2026-11-27T13:00:00.5Z"),
            List.of(
                    new PastJob(at(0), true, at(90_000), false, JobEnd.DONE, PrinterState.PRINTING, 0.995, 0),
                    new PastJob(
                            at(100_000),
                            false,
                            at(200_001),
                            true,
                            JobEnd.UNSEEN,
                            PrinterState.FAULT,
                            Double.NaN,
                            5000)),
            List.of(
                    new PastFault(
                            at(150_000),
                            "Düse zu kalt: 喷嘴太冷",
                            Optional.of(at(160_000)),
                            true,
                            Optional.of(new Acknowledgement(at(155_000), "page", "192.0.2.7", "ada"))),
                    PastFault.began(at(170_000), "")),
            List.of(new StateSpan(PrinterState.IDLE, at(0), at(1)), new StateSpan(PrinterState.SILENT, at(5), at(6))),
            List.of(new CurvePiece(
                    at(0), new float[] {20.5f, Float.NaN}, new float[] {Float.NaN, 215}, new float[] {0, Float.NaN})));

    private static Stamp at(long millis) {
        return new Stamp(TestClock.NOON.toEpochMilli() + millis, false);
    }

    @Test
    void isReadAsItWasWritten() {
        Account read = HistoryText.read(HistoryText.of(Accounts.of(ACCOUNT))).of("");
        assertEquals(ACCOUNT.asOf(), read.asOf());
        assertEquals(ACCOUNT.jobs(), read.jobs());
        assertEquals(ACCOUNT.faults(), read.faults());
        assertEquals(ACCOUNT.spans(), read.spans());
        CurvePiece curve = read.curves().get(0);
        assertEquals(at(0), curve.from());
        assertArrayEquals(ACCOUNT.curves().get(0).bed(), curve.bed());
        assertArrayEquals(ACCOUNT.curves().get(0).nozzle(), curve.nozzle());
        assertArrayEquals(ACCOUNT.curves().get(0).milliamps(), curve.milliamps());
    }

    @Test
    void everyThingHasALine() {
        assertEquals(9, HistoryText.of(Accounts.of(ACCOUNT)).lines().count());
    }

    @Test
    void whatIsCutOffAnywhereIsRefused() {
        String whole = HistoryText.of(Accounts.of(ACCOUNT));
        for (int length = 0; length < whole.length() - 1; length++) {
            String part = whole.substring(0, length);
            String why = assertThrows(IllegalArgumentException.class, () -> HistoryText.read(part), part)
                    .getMessage();
            assertTrue(why.matches("is (cut off|not what).*"), why);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "history 1 | history 2 | is not what this version of lampwright writes there",
                "\"done\" | \"finished\" | which is not possible",
                "\"idle\" | \"asleep\" | which is not possible",
                "0.995 | 2 | which is not possible",
                "2026-11-27T12:00:00Z | yesterday | which is not possible",
                "2026-11-27T12:00:00Z | +999999999-12-31T23:59:59.999999999Z | which is not possible",
                "[20.5,null] | [20.5] | which is not possible",
                "{\"fault\": | {\"trouble\": | is cut off, or is not lines of JSON"
            })
    void whatMakesNoSenseIsRefused(String text, String instead, String why) {
        String whole = HistoryText.of(Accounts.of(ACCOUNT));
        assertTrue(whole.contains(text), text);
        String damaged = whole.replace(text, instead);
        String message = assertThrows(IllegalArgumentException.class, () -> HistoryText.read(damaged))
                .getMessage();
        assertTrue(message.endsWith(why), message);
    }

    @Test
    void moreThanIsKeptIsRefused() {
        Account more = new Account(
                ACCOUNT.asOf(),
                Collections.nCopies(Logbook.MOST_JOBS + 1, ACCOUNT.jobs().get(0)),
                List.of(),
                List.of(),
                List.of());
        assertThrows(IllegalArgumentException.class, () -> HistoryText.read(HistoryText.of(Accounts.of(more))));
    }

    @Test
    void whatWasOverByThenIsLeftOut() {
        Account since = ACCOUNT.since(at(100_000).instant());
        assertEquals(1, since.jobs().size());
        assertEquals(2, since.faults().size());
        assertEquals(List.of(), since.spans());
        assertEquals(1, ACCOUNT.since(Instant.MAX).faults().size(), "the one that goes on");
        assertEquals(2, ACCOUNT.since(Instant.MIN).jobs().size());
        assertEquals(
                at(10_000), ACCOUNT.since(at(10_000).instant()).curves().get(0).from());
    }
}
