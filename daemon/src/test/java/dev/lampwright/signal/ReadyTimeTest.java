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

    /**
     * The closed form; two kelvins short of the target count as ready. Nothing shows yet that this bed is not throttled near its target.
     */
    @Test
    void findsTheClosedFormsTime() {
        double truth = bedIsAt(58);
        assertNear(truth, heat(60, 0, 150), 150);
        assertTrue(ready.errorS() < 0.3 * (truth - 150), () -> "" + ready.errorS());
    }

    /** Within two standard errors, and a sixth of the time left. */
    private void assertNear(double truth, double told, double now) {
        assertEquals(truth, told, 2 * ready.errorS());
        assertEquals(truth, told, (truth - now) / 6);
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
        assertNear(truth, ready.take(bed(150), 80, 150, true), 150);
    }

    @Test
    void aTargetThatIsLoweredBelowIsReady() {
        heat(90, 0, 150);
        assertEquals(150, ready.take(bed(150), 45, 150, true));
    }

    /** A daemon started on the way sees a curve without its beginning. */
    @Test
    void needsNoBeginning() {
        double truth = bedIsAt(88);
        assertNear(truth, heat(90, 150, 330), 330);
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
            assertNear(truth, ready.take(bed(149), 70, 149 + 0.1 * i, false), 149 + 0.1 * i);
        }
        assertNear(truth, heat(70, 160, 200), 200);
    }

    /** Knowledge from the first heat-up makes the second better, at a quarter of the way. */
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

    /** A heater that is too weak: every estimate along the way is withdrawn, the second time as well. */
    @Test
    void isUnknownWhereTheTargetIsOutOfReach() {
        for (int time = 0; time < 2; time++) {
            double end = 0;
            for (int t = 0; t < 4000; t++) {
                end = ready.take(50 + (ROOM_C - 50) * Math.exp(-t / 300.0), 60, 5000 * time + t, true);
                assertTrue(Double.isNaN(end) || end >= 5000 * time + t);
            }
            assertTrue(Double.isNaN(end), "is " + end);
            ready.take(30, 0, 5000 * time + 4000, true);
        }
    }

    /** Power goes off half way, and comes back. */
    @Test
    void survivesALossOfPower() {
        heat(60, 0, 100);
        for (int t = 100; t < 400; t++) {
            double end = ready.take(ROOM_C + (bed(100) - ROOM_C) * Math.exp(-(t - 100) / TAU_S), 60, t, true);
            assertTrue(Double.isNaN(end) || (end >= t && ready.errorS() > 0), "is " + end);
        }
        double again = bedIsAt(ROOM_C + (bed(100) - ROOM_C) * Math.exp(-300 / TAU_S));
        for (int t = 400; bed(again + t - 400) < 58; t++) {
            double end = ready.take(bed(again + t - 400), 60, t, true);
            assertTrue(Double.isNaN(end) || (end >= t && ready.errorS() > 0), "is " + end);
        }
    }

    /** Late reports, each of them twice. */
    @Test
    void takesReportsThatComeLateAndTwice() {
        double end = 0;
        for (int t = 0; t < 160; t += t % 40 == 0 ? 25 : 5) {
            end = ready.take(bed(t), 60, t, true);
            assertEquals(end, ready.take(bed(t), 60, t, true), 1e-9);
        }
        assertEquals(bedIsAt(58), end, 2 * ready.errorS());
    }

    /** Invented heaters that are not quite of first order, are throttled and lag: overall it is right within a fifth at half way. */
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

    /** The error as a share of the time left. */
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
