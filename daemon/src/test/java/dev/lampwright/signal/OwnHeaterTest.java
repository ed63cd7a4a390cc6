package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.signal.HeatUpRecord.Telling;
import dev.lampwright.signal.HeaterModel.Build;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** User-defined heaters have the same signals as the built-in ones. */
final class OwnHeaterTest {
    private static final long SECOND = 1_000_000_000L;
    private static final double ROOM_C = 22;
    private static final List<String> MEASURES =
            List.of("heat", "cooling", "ready_s", "ready_error_s", "speed_K_per_s", "actual_C", "setpoint_C");
    private static final OwnHeater SECOND_NOZZLE = new OwnHeater("nozzle2");

    private static List<Signal> signalsOf(List<OwnHeater> heaters) {
        List<OwnQuantity> quantities = heaters.stream()
                .flatMap(heater -> List.of(heater.actual(), heater.setpoint()).stream())
                .toList();
        return Signal.ofOwn(quantities);
    }

    private static Map<String, Signal> byName(List<Signal> own) {
        Map<String, Signal> signals = own.stream().collect(Collectors.toMap(Signal::key, Function.identity()));
        Signal.all().forEach(signal -> signals.put(signal.key(), signal));
        return signals;
    }

    /** The same readings for both: a heat-up, and then cooling back to room temperature. */
    private static List<PrinterStatus> told() {
        HeatUpRecord record = HeatUpRecord.of(Build.NOZZLE, 215, Telling.NOISY, 1);
        List<PrinterStatus> statuses = new ArrayList<>();
        PrinterStatus status = PrinterStatus.nothingHeard().withState(PrinterState.PRINTING, 0);
        for (HeatUpRecord.Told told : record.readings()) {
            status = both(status, told.celsius(), 215, Math.round(told.seconds() * SECOND));
            statuses.add(status);
        }
        long end = status.heardAtNanos();
        for (int t = 1; t < 60; t++) {
            status = both(status, ROOM_C + 190 * Math.exp(-t / 20.0), 0, end + t * SECOND);
            statuses.add(status);
        }
        return statuses;
    }

    private static PrinterStatus both(PrinterStatus before, double actual, double setpoint, long nanos) {
        return before.withReading(Quantity.NOZZLE_SETPOINT, setpoint, nanos)
                .withReading(Quantity.NOZZLE_ACTUAL, actual, nanos)
                .withOwn("nozzle2.setpoint_C", setpoint, nanos)
                .withOwn("nozzle2.actual_C", actual, nanos);
    }

    @Test
    void aSecondNozzleIsLikeTheFirstAtAnyTime() {
        List<Signal> own = signalsOf(List.of(SECOND_NOZZLE));
        Map<String, Signal> byName = byName(own);
        Signals signals = new Signals(Room.at(ROOM_C), own);
        int known = 0;
        for (PrinterStatus status : told()) {
            signals.follow(status);
            for (String measure : MEASURES) {
                for (int step = 0; step < 3; step++) {
                    long nanos = status.heardAtNanos() + step * SECOND / 3;
                    double first = signals.value(byName.get("nozzle." + measure), nanos);
                    assertEquals(first, signals.value(byName.get("nozzle2." + measure), nanos), measure);
                    assertEquals(
                            signals.stillFor(byName.get("nozzle." + measure), nanos),
                            signals.stillFor(byName.get("nozzle2." + measure), nanos));
                    known += Double.isNaN(first) ? 0 : 1;
                }
            }
        }
        assertTrue(known > 1000, known + " values were known");
    }

    @Test
    void theirNamesAndSharesAreThoseOfTheNozzle() {
        Map<String, Signal> byName = byName(signalsOf(List.of(SECOND_NOZZLE)));
        assertEquals(Signal.all().size() + MEASURES.size(), byName.size());
        for (String measure : MEASURES) {
            assertEquals(
                    byName.get("nozzle." + measure).isShare(),
                    byName.get("nozzle2." + measure).isShare(),
                    measure);
        }
    }

    /** Hot is hot, whichever heater it is. */
    @Test
    void oneThatCoolsIsStillHot() {
        List<Signal> own = signalsOf(List.of(SECOND_NOZZLE));
        Signals signals = new Signals(Room.at(ROOM_C), own);
        PrinterStatus status =
                PrinterStatus.nothingHeard().withOwn("nozzle2.setpoint_C", 0, 0).withOwn("nozzle2.actual_C", 120, 0);
        signals.follow(status);
        Signal stillHot = Signal.named("still_hot").orElseThrow();
        assertEquals(1, signals.value(stillHot, SECOND), 1e-9);
        signals.follow(status.withOwn("nozzle2.actual_C", 40, 10 * SECOND));
        assertEquals(0, signals.value(stillHot, 20 * SECOND), 1e-9);
    }

    /** Nothing moves before the second heater: each follows its own readings. */
    @Test
    void eachGoesByItsOwnReadings() {
        List<Signal> own = signalsOf(List.of(SECOND_NOZZLE, new OwnHeater("dryer")));
        Map<String, Signal> byName = byName(own);
        Signals signals = new Signals(Room.at(ROOM_C), own);
        signals.follow(PrinterStatus.nothingHeard()
                .withReading(Quantity.NOZZLE_SETPOINT, 200, 0)
                .withReading(Quantity.NOZZLE_ACTUAL, ROOM_C, 0)
                .withOwn("nozzle2.setpoint_C", 222, 0)
                .withOwn("nozzle2.actual_C", ROOM_C + 100, 0)
                .withOwn("dryer.setpoint_C", 62, 0)
                .withOwn("dryer.actual_C", ROOM_C + 10, 0));
        assertEquals(0, signals.value(byName.get("nozzle.heat"), SECOND), 1e-9);
        assertEquals(0.5, signals.value(byName.get("nozzle2.heat"), SECOND), 1e-9);
        assertEquals(0.25, signals.value(byName.get("dryer.heat"), SECOND), 1e-9);
    }

    /** Eight heaters, the maximum in a file. A compiler that is still working may allocate on the thread's account. */
    @Test
    void allocateNothing() {
        List<OwnHeater> heaters = IntStream.rangeClosed(2, 9)
                .mapToObj(i -> new OwnHeater("nozzle" + i))
                .toList();
        List<Signal> own = signalsOf(heaters);
        PrinterStatus[] statuses = told().toArray(PrinterStatus[]::new);
        Signals signals = new Signals(Room.at(ROOM_C), own);
        Signal[] all = signals.all().toArray(Signal[]::new);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long least = Long.MAX_VALUE;
        for (int round = 0; round < 6; round++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            double sum = 0;
            for (PrinterStatus status : statuses) {
                signals.follow(status);
                for (Signal signal : all) {
                    sum += signals.value(signal, status.heardAtNanos());
                }
            }
            assertTrue(Double.isNaN(sum));
            least = Math.min(least, (threads.getCurrentThreadAllocatedBytes() - before) / statuses.length);
        }
        assertEquals(0, least);
    }
}
