package dev.lampwright.shelf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.printer.PrinterState;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ShelfTest {
    private static final boolean KEPT = true;

    private final Shelf shelf = new Shelf(Duration.ofSeconds(15));
    private double second;

    private void hear(String rig, byte[] status, boolean kept) {
        shelf.hear("shop/" + rig + "/status", status, kept, nanos(), wall());
    }

    private void hear(String rig, PrinterState state, AlarmState alarm) {
        hear(rig, Statuses.of(rig, state, alarm, "a1", wall()), false);
    }

    private void hear(String rig, PrinterState state) {
        hear(rig, state, AlarmState.NORMAL);
    }

    private long nanos() {
        return (long) (second * TimeUnit.SECONDS.toNanos(1));
    }

    private Instant wall() {
        return Statuses.AT.plusNanos(nanos());
    }

    private List<ShelfRow> rows() {
        return shelf.rows(nanos());
    }

    private Standing standing() {
        assertEquals(1, rows().size());
        return rows().get(0).standing();
    }

    private String names() {
        return rows().stream().map(row -> row.status().rig()).collect(Collectors.joining(" "));
    }

    @Test
    void whoNeedsAPersonComesFirst() {
        hear("idle", PrinterState.IDLE);
        hear("silent", PrinterState.SILENT);
        hear("gone", Statuses.gone("gone", "lost"), false);
        hear("ended", Statuses.gone("ended", "stopped"), false);
        hear("done", PrinterState.DONE);
        hear("stopped", PrinterState.STOPPED);
        hear("paused", PrinterState.HELD);
        hear("printing", PrinterState.PRINTING);
        hear("seen", PrinterState.FAULT, AlarmState.ACKNOWLEDGED);
        hear("fault", PrinterState.FAULT, AlarmState.ALERT);
        hear("over", PrinterState.IDLE, AlarmState.ALERT);
        hear("waits", PrinterState.IDLE, AlarmState.RINGBACK);
        assertEquals("fault over seen waits paused done stopped printing idle gone silent ended", names());
        assertEquals(
                7, rows().stream().filter(row -> row.standing().needsPerson()).count());
    }

    @Test
    void aRigWithSeveralPrintersStandsWhereTheOneDoesThatNeedsAPersonMost() {
        hear("idle", PrinterState.IDLE);
        hear("done", PrinterState.DONE);
        hear("bench", Statuses.ofSeveral("bench", wall()), false);
        assertEquals("bench done idle", names());
        ShelfRow bench = rows().get(0);
        assertEquals(Standing.FAULT, bench.standing());
        assertEquals(
                List.of("birch fault", "hazel working", "rowan working", "alder working"),
                bench.printers().stream()
                        .map(printer ->
                                printer.name() + " " + printer.standing().word())
                        .toList());
        second = 60;
        assertEquals(Standing.LOST, rows().get(0).standing());
        assertEquals(List.of(), rows().get(0).printers(), "nobody knows what they do now");
    }

    @Test
    void namesWithNumbersAreInTheOrderOfTheNumbers() {
        List<String> names = List.of("a", "A2", "a10", "a10b", "a100", "b1", "b01x", "b2");
        for (int i = 0; i < names.size(); i++) {
            for (int j = 0; j < names.size(); j++) {
                assertEquals(
                        Integer.compare(i, j),
                        Integer.signum(NaturalOrder.OF_NAMES.compare(names.get(i), names.get(j))),
                        names.get(i) + " " + names.get(j));
            }
        }
        assertEquals(0, NaturalOrder.OF_NAMES.compare("p007", "P7"));
    }

    @Test
    void whoIsReadySoonestComesFirstAmongThoseAtWorkAndTheRestGoByName() {
        hear("p2", Statuses.of("p2", PrinterState.PRINTING, AlarmState.NORMAL, "a1", wall(), 900), false);
        hear("p10", Statuses.of("p10", PrinterState.PRINTING, AlarmState.NORMAL, "a1", wall(), 60), false);
        hear("p1", Statuses.of("p1", PrinterState.PRINTING, AlarmState.NORMAL, "a1", wall(), Double.NaN), false);
        hear("q10", PrinterState.IDLE);
        hear("q9", PrinterState.IDLE);
        hear("Q1", PrinterState.IDLE);
        assertEquals("p10 p2 p1 Q1 q9 q10", names());
    }

    @Test
    void whoHasNotReportedForLongIsLost() {
        hear("alder", PrinterState.PRINTING);
        second = 14.9;
        assertEquals(Standing.WORKING, standing());
        assertEquals(14.9, rows().get(0).heardSeconds(), 0.01);
        second = 15;
        assertEquals(Standing.LOST, standing());
        hear("alder", PrinterState.PRINTING);
        assertEquals(Standing.WORKING, standing());
    }

    /** A computer that lost its power while its broker was away cannot withdraw its status: the broker retains "online" for ever. */
    @Test
    void aKeptStatusIsAsOldAsItSays() {
        second = 3600;
        hear("alder", Statuses.of("alder", PrinterState.PRINTING), KEPT);
        assertEquals(Standing.LOST, standing());
        assertEquals(3600, rows().get(0).heardSeconds(), 0.01);
        second = 3603;
        hear("alder", Statuses.of("alder", PrinterState.PRINTING, AlarmState.NORMAL, "a1", wall()), KEPT);
        assertEquals(Standing.WORKING, standing());
        second = 3618;
        assertEquals(Standing.LOST, standing());
    }

    @Test
    void aKeptStatusThatDoesNotSayWhenIsOld() {
        hear("alder", "{\"program\":\"lampwright\",\"online\":true}".getBytes(StandardCharsets.UTF_8), KEPT);
        assertEquals(Standing.LOST, standing());
        assertTrue(Double.isNaN(rows().get(0).heardSeconds()));
    }

    /** The clock of that computer is an hour slow; its second message arrives as it is published. */
    @Test
    void aWrongClockMakesUnsureOnlyUntilTheNextReport() {
        Instant wrong = wall().minusSeconds(3600);
        hear("alder", Statuses.of("alder", PrinterState.IDLE, AlarmState.NORMAL, "a1", wrong), KEPT);
        assertEquals(Standing.LOST, standing());
        assertTrue(shelf.isUnsure(nanos()));
        second = 4;
        hear("alder", Statuses.of("alder", PrinterState.IDLE, AlarmState.NORMAL, "a1", wrong.plusSeconds(4)), false);
        assertEquals(Standing.IDLE, standing());
        assertFalse(shelf.isUnsure(nanos()));
        second = 6;
        hear("alder", Statuses.of("alder", PrinterState.IDLE, AlarmState.NORMAL, "a1", wrong.plusSeconds(4)), KEPT);
        assertEquals(2, rows().get(0).heardSeconds(), 0.01);
    }

    @Test
    void aClockThatIsAheadMakesNobodyYoungerThanNow() {
        Instant ahead = wall().plusSeconds(3600);
        hear("alder", Statuses.of("alder", PrinterState.IDLE, AlarmState.NORMAL, "a1", ahead), KEPT);
        assertEquals(Standing.IDLE, standing());
        second = 15;
        assertEquals(Standing.LOST, standing());
    }

    @Test
    void whileTheBrokerIsAwayNoStatusAges() {
        hear("alder", PrinterState.PRINTING);
        hear("birch", PrinterState.IDLE);
        second = 5;
        shelf.connected(false, nanos());
        second = 500;
        assertEquals("alder birch", names());
        assertEquals(5, rows().get(0).heardSeconds(), 0.01);
        hear("alder", Statuses.of("alder", PrinterState.PRINTING, AlarmState.NORMAL, "a1", wall()), KEPT);
        assertEquals(0, rows().get(0).heardSeconds(), 0.01);
        assertEquals(5, rows().get(1).heardSeconds(), 0.01);
        second = 510;
        assertEquals(Standing.LOST, rows().get(1).standing());
    }

    @Test
    void twoDaemonsWithOnePrefixAreNoticedAndOneThatStartsAgainIsNot() {
        for (String run : List.of("a1", "a1", "b2", "b2", "c3")) {
            hear("alder", Statuses.of("alder", PrinterState.IDLE, AlarmState.NORMAL, run, wall()), false);
            assertFalse(rows().get(0).twice(), run);
        }
        hear("alder", Statuses.of("alder", PrinterState.IDLE, AlarmState.NORMAL, "b2", wall()), false);
        assertTrue(rows().get(0).twice());
        for (second = 1; second < 40; second++) {
            hear("alder", Statuses.of("alder", PrinterState.IDLE, AlarmState.NORMAL, "b2", wall()), false);
        }
        assertFalse(rows().get(0).twice(), "the other has been away for long");
    }

    @Test
    void aWithdrawnStatusLeavesTheShelf() {
        hear("alder", PrinterState.IDLE);
        hear("alder", new byte[0], false);
        assertEquals(List.of(), rows());
    }

    @Test
    void noMoreAreKeptThanThereIsRoomFor() {
        byte[] status = Statuses.of("alder", PrinterState.IDLE);
        for (int i = 0; i < Shelf.MOST + 3; i++) {
            hear("p" + i, status, false);
        }
        assertEquals(Shelf.MOST, rows().size());
        assertEquals(3, shelf.left());
    }

    @Test
    void everyDepthHasAFilterOfItsOwn() {
        assertEquals(List.of("+/status", "+/+/status", "+/+/+/status"), ShelfListener.filters(3));
    }
}
