package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.HeatUpRecord.Telling;
import dev.lampwright.signal.HeaterModel.Build;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

final class SignalsTest {
    private static final long SECOND = 1_000_000_000L;

    private final Signals signals = new Signals(22);
    private PrinterStatus status = PrinterStatus.nothingHeard();

    private void say(PrinterState state, long second) {
        status = status.withState(state, second * SECOND);
        signals.follow(status);
    }

    private void say(Quantity quantity, double value, long second) {
        status = status.withReading(quantity, value, second * SECOND);
        signals.follow(status);
    }

    private double value(String key, long second) {
        return signals.value(signal(key), second * SECOND);
    }

    private static Signal signal(String key) {
        return Signal.named(key).orElseThrow();
    }

    private static List<Signal> all() {
        return Signal.all();
    }

    @ParameterizedTest
    @MethodSource("all")
    void isUnknownBeforeAnythingIsHeard(Signal signal) {
        signals.follow(status);
        assertTrue(Double.isNaN(value(signal.key(), 0)));
        assertTrue(Double.isNaN(value(signal.key(), 100)));
    }

    /** The page also uses the name to recognise shares. */
    @ParameterizedTest
    @MethodSource("all")
    void whatHasAUnitIsNoShare(Signal signal) {
        assertEquals(!signal.key().matches(".*_(C|s|per_h|K_per_s)"), signal.isShare());
    }

    /** Names are in people's files: new ones may be added, none may be removed. */
    @Test
    void allSignalsHaveTheirNames() {
        List<String> keys = new ArrayList<>(List.of("still_hot", "job.speed_per_h", "job.progress", "job.left_s"));
        for (String body : List.of("bed", "nozzle", "chamber")) {
            for (String measure :
                    List.of("heat", "cooling", "ready_s", "ready_error_s", "speed_K_per_s", "actual_C", "setpoint_C")) {
                keys.add(body + '.' + measure);
            }
        }
        assertEquals(
                new TreeSet<>(keys),
                new TreeSet<>(all().stream().map(Signal::key).toList()));
        assertEquals(keys.size(), all().size());
    }

    @Test
    void aReadingIsFollowedBySignalsOfItsName() {
        assertEquals("bed.actual_C", Signal.of(Quantity.BED_ACTUAL).key());
        assertEquals(Optional.of(Quantity.BED_ACTUAL), signal("bed.actual_C").quantity());
        assertEquals(Optional.empty(), signal("job.left_s").quantity());
        assertThrows(IllegalArgumentException.class, () -> Signal.of(Quantity.JOB_LEFT));
        assertEquals(Optional.empty(), Signal.named("bed"));
    }

    /** Time left as reported by the printer runs on between messages, and stops while the job does. */
    @Test
    void theTimeLeftThatIsToldRuns() {
        say(PrinterState.PRINTING, 0);
        say(Quantity.JOB_LEFT, 3600, 0);
        assertEquals(3570, value("job.left_s", 30), 1e-6);
        say(PrinterState.HELD, 60);
        assertEquals(3540, value("job.left_s", 900), 1e-6);
        say(PrinterState.PRINTING, 900);
        assertEquals(3530, value("job.left_s", 910), 1e-6);
    }

    /** For a printer that does not report it: a job of an hour, held for ten minutes in the middle. */
    @Test
    void theTimeLeftThatIsNotToldFollowsFromProgress() {
        say(PrinterState.PRINTING, 0);
        for (int t = 0; t <= 1200; t++) {
            say(Quantity.JOB_PROGRESS, t / 3600.0, t);
        }
        assertEquals(2400, value("job.left_s", 1202), 10);
        assertEquals(1, value("job.speed_per_h", 1202), 0.01);
        say(PrinterState.HELD, 1200);
        say(Quantity.JOB_PROGRESS, 1 / 3.0, 1700);
        assertEquals(2400, value("job.left_s", 1800), 10);
        assertEquals(0, value("job.speed_per_h", 1800), 0);
        say(PrinterState.PRINTING, 1800);
        say(Quantity.JOB_PROGRESS, 1300 / 3600.0, 1900);
        assertEquals(2300, value("job.left_s", 1902), 15);
        say(PrinterState.IDLE, 1910);
        say(Quantity.JOB_PROGRESS, Double.NaN, 1910);
        assertTrue(Double.isNaN(value("job.left_s", 1920)));
        assertTrue(Double.isNaN(value("job.speed_per_h", 1920)));
    }

    @Test
    void thePrintersWordCountsForMore() {
        say(PrinterState.PRINTING, 0);
        say(Quantity.JOB_LEFT, 100, 0);
        for (int t = 0; t <= 300; t++) {
            say(Quantity.JOB_PROGRESS, t / 3600.0, t);
        }
        say(Quantity.JOB_LEFT, 5000, 300);
        assertEquals(4990, value("job.left_s", 310), 1e-6);
    }

    @Test
    void aPartThatIsHotWithoutATargetIsStillHot() {
        say(Quantity.BED_SETPOINT, 60, 0);
        say(Quantity.BED_ACTUAL, 60, 0);
        assertTrue(Double.isNaN(value("still_hot", 1)));
        say(Quantity.BED_SETPOINT, 0, 10);
        say(Quantity.NOZZLE_SETPOINT, 0, 10);
        say(Quantity.NOZZLE_ACTUAL, 40, 10);
        assertEquals(1, value("bed.cooling", 12), 1e-9);
        assertEquals(0, value("nozzle.cooling", 12), 1e-9);
        assertEquals(1, value("still_hot", 12), 1e-9);
        say(Quantity.BED_ACTUAL, 43, 20);
        assertEquals(0, value("still_hot", 22), 1e-9);
    }

    @Test
    void theBoundIsAtChoice() {
        Signals careful = new Signals(new Room(22, 30));
        careful.follow(status.withReading(Quantity.BED_SETPOINT, 0, 0).withReading(Quantity.BED_ACTUAL, 40, 0));
        assertEquals(1, careful.value(signal("bed.cooling"), SECOND), 1e-9);
    }

    @Test
    void speedIsThatOfTheTemperature() {
        for (int t = 0; t < 60; t++) {
            say(Quantity.NOZZLE_ACTUAL, 100 + 2.5 * t, t);
        }
        assertEquals(2.5, value("nozzle.speed_K_per_s", 61), 1e-6);
        assertTrue(Double.isNaN(value("bed.speed_K_per_s", 61)));
    }

    /** A whole heat-up, frame by frame, as light sees it: time to ready is never negative, has no steps, and ends at zero. */
    @Test
    void timeToReadyRunsDownSmoothly() {
        HeatUpRecord record = HeatUpRecord.of(Build.BED, 60, Telling.COARSE, 3);
        Player player = new Player();
        player.begin(record);
        double last = Double.NaN;
        for (double t = 0; t < record.readyS() + 20; t += 1 / 30.0) {
            player.playUntil(record, t);
            double left = player.value("bed.ready_s", t);
            assertTrue(Double.isNaN(left) || left >= 0);
            assertTrue(!(Math.abs(left - last) > 1), "from " + last + " to " + left + " at " + t);
            last = left;
        }
        assertEquals(0, last, 0);
        assertEquals(0, player.value("bed.ready_error_s", record.readyS() + 20), 0);
    }

    /** A compiler that is still working may allocate on the thread's account; a leak of a byte per frame shows in every round. */
    @Test
    void allocatesNothing() {
        List<PrinterStatus> statuses = new ArrayList<>();
        HeatUpRecord record = HeatUpRecord.of(Build.NOZZLE, 215, Telling.NOISY, 1);
        PrinterStatus next = status.withState(PrinterState.PRINTING, 0);
        for (HeatUpRecord.Told told : record.readings()) {
            long nanos = Math.round(told.seconds() * SECOND);
            next = next.withReading(Quantity.NOZZLE_SETPOINT, 215, nanos)
                    .withReading(Quantity.NOZZLE_ACTUAL, told.celsius(), nanos)
                    .withReading(Quantity.JOB_PROGRESS, told.seconds() / 400, nanos);
            statuses.add(next);
        }
        Signal[] all = all().toArray(Signal[]::new);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long least = Long.MAX_VALUE;
        for (int round = 0; round < 6; round++) {
            long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
            play(statuses, all);
            least = Math.min(
                    least,
                    threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before);
        }
        assertTrue(least < 1000, least + " bytes");
    }

    private void play(List<PrinterStatus> statuses, Signal[] all) {
        for (int round = 0; round < 50; round++) {
            for (int i = 0; i < statuses.size(); i++) {
                signals.follow(statuses.get(i));
                for (int k = 0; k < all.length; k++) {
                    signals.value(all[k], statuses.get(i).heardAtNanos());
                }
            }
        }
    }
}
