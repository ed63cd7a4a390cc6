package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.signal.HeatUpRecord.Telling;
import dev.lampwright.signal.HeaterModel.Build;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ReadyTimeTest {
    private static final double ROOM_C = 22;
    private static final double END_C = 132;
    private static final double TAU_S = 500;

    private final ReadyTime ready = new ReadyTime(ROOM_C);

    /** A bed of first order at full power since time 0. */
    private static double bed(double seconds) {
        return END_C + (ROOM_C - END_C) * Math.exp(-seconds / TAU_S);
    }

    private static double bedIsAt(double celsius) {
        return TAU_S * Math.log((END_C - ROOM_C) / (END_C - celsius));
    }

    private double heat(double targetC, int fromS, int toS) {
        return IntStream.range(fromS, toS)
                .mapToDouble(t -> ready.take(bed(t), targetC, t, true))
                .reduce(Double.NaN, (before, now) -> now);
    }

    @Test
    void isUnknownWhileNothingHeatsOrAReadingIsMissing() {
        assertTrue(Double.isNaN(ready.take(30, 0, 0, true)));
        assertTrue(Double.isNaN(ready.take(Double.NaN, 60, 1, true)));
        assertTrue(Double.isNaN(ready.take(30, Double.NaN, 2, true)));
        assertTrue(Double.isNaN(ready.errorS()));
    }

    @Test
    void isUnknownAtFirst() {
        assertTrue(Double.isNaN(heat(60, 0, 6)));
    }

    /** The closed form, once the curve has bent enough to tell; two kelvins short of the target count as ready. */
    @Test
    void findsTheClosedFormsTime() {
        double truth = bedIsAt(58);
        assertEquals(truth, heat(60, 0, 150), 0.03 * (truth - 150));
        assertTrue(ready.errorS() > 0 && ready.errorS() < 0.1 * (truth - 150), () -> "" + ready.errorS());
    }

    @Test
    void isNowOnceItIsReady() {
        heat(60, 0, 100);
        assertEquals(200, ready.take(58.1, 60, 200, true));
        assertEquals(201, ready.take(56, 60, 201, true), "it may sink a little");
        assertEquals(202, ready.take(61, 60, 202, true));
        assertEquals(0, ready.errorS());
        assertTrue(Double.isNaN(ready.take(52, 60, 203, true)), "it has sunk, and nothing is known yet");
    }

    @Test
    void aTargetThatIsRaisedOnTheWayIsReckonedAtOnceFromWhatWasSeen() {
        heat(60, 0, 150);
        double truth = bedIsAt(78);
        assertEquals(truth, ready.take(bed(150), 80, 150, true), 0.06 * (truth - 150));
    }

    @Test
    void aTargetThatIsLoweredBelowIsReady() {
        heat(90, 0, 150);
        assertEquals(150, ready.take(bed(150), 45, 150, true));
    }

    /** A daemon that is started on the way sees a curve without its beginning. */
    @Test
    void needsNoBeginning() {
        double truth = bedIsAt(88);
        assertEquals(truth, heat(90, 150, 330), 0.04 * (truth - 330));
    }

    @Test
    void isUnknownAgainWhenItComesToAStandstill() {
        heat(60, 0, 100);
        double end = 0;
        for (int t = 100; t < 800; t++) {
            end = ready.take(bed(100), 60, t, true);
        }
        assertTrue(Double.isNaN(end) || end > 800 + 600, "is " + end);
    }

    @Test
    void aNewTargetAloneAddsNoReading() {
        heat(60, 0, 150);
        double truth = bedIsAt(68);
        for (int i = 1; i <= 100; i++) {
            assertEquals(truth, ready.take(bed(149), 70, 149 + 0.1 * i, false), 0.05 * truth);
        }
        assertEquals(truth, heat(70, 160, 200), 0.03 * truth);
    }

    /** What the second heat-up knows of the first makes it better than that was, at a quarter of the way. */
    @Test
    void learnsFromOneHeatUpToTheNext() {
        double first = 0;
        double second = 0;
        for (int i = 0; i < 10; i++) {
            Player player = new Player();
            first += off(player, HeatUpRecord.of(Build.SLOW_NOZZLE, 260, Telling.NOISY, 2L * i), 0.25);
            second += off(player, HeatUpRecord.of(Build.SLOW_NOZZLE, 260, Telling.NOISY, 2L * i + 1), 0.25);
        }
        assertTrue(second < first / 2, first + " then " + second);
    }

    /** Invented heaters that are not quite of first order, are throttled and lag: on the whole it is right within a fifth at half way. */
    @ParameterizedTest
    @CsvSource({"BED, 60", "BED, 100", "SLOW_BED, 90", "NOZZLE, 215", "SLOW_NOZZLE, 215"})
    void isRightOnTheWhole(String heater, double targetC) throws ReflectiveOperationException {
        Build build = (Build) Build.class.getDeclaredField(heater).get(null);
        for (Telling telling : new Telling[] {Telling.FINE, Telling.NOISY, Telling.COARSE, Telling.SELDOM}) {
            double off = IntStream.range(0, 20)
                    .mapToDouble(seed -> off(new Player(), HeatUpRecord.of(build, targetC, telling, seed), 0.5))
                    .average()
                    .orElseThrow();
            assertTrue(off < 0.2, heater + " told " + telling + " is off by " + off);
        }
    }

    /** Share of the time left by which it is off. */
    private static double off(Player player, HeatUpRecord record, double share) {
        player.begin(record);
        double at = record.reaches(share);
        player.playUntil(record, at);
        double left = record.readyS() - at;
        double off = Math.abs(player.value("bed.ready_s", at) - left) / left;
        player.playUntil(record, Double.POSITIVE_INFINITY);
        return off;
    }
}
