package dev.lampwright.history;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class CurvesTest {
    private static final float GAP = Float.NaN;

    private final Curves curves = new Curves();

    private CurvePiece piece(long nowMillis) {
        return curves.pieces(0, nowMillis).get(0);
    }

    @Test
    void aValueEveryTenSecondsIsKept() {
        for (int second = 0; second <= 30; second++) {
            curves.add(second * 1000L, 20 + second / 10.0, Double.NaN, second % 10);
        }
        CurvePiece piece = piece(30_000);
        assertArrayEquals(new float[] {20, 21, 22, 23}, piece.bed());
        assertArrayEquals(new float[] {GAP, GAP, GAP, GAP}, piece.nozzle());
        assertArrayEquals(new float[] {0, 9, 9, 9}, piece.milliamps(), "the most since the value before");
        assertEquals(0, piece.from().millis());
    }

    @Test
    void timeWithoutValuesIsAGap() {
        curves.add(0, 20, 20, 1);
        curves.add(35_000, 21, 20, 2);
        assertArrayEquals(new float[] {20, GAP, GAP, 21}, piece(35_000).bed());
        curves.add(Curves.STEP_MILLIS * 3 * Curves.MOST, 22, 20, 3);
        CurvePiece piece = piece(Curves.STEP_MILLIS * 3 * Curves.MOST);
        assertEquals(Curves.MOST, piece.length());
        assertEquals(22, piece.bed()[Curves.MOST - 1]);
        assertTrue(Float.isNaN(piece.bed()[Curves.MOST - 2]));
    }

    @Test
    void whatEarlierRunsHaveSeenGoesOnceItIsSixHoursOld() {
        CurvePiece before = new CurvePiece(
                new Stamp(0, false), new float[] {1, 2, 3}, new float[] {1, 2, 3}, new float[] {1, 2, 3});
        curves.restore(List.of(before));
        long now = 25_000 + Curves.MOST * Curves.STEP_MILLIS;
        curves.add(now, 60, 215, 100);
        assertEquals(1, curves.pieces(0, now).size(), "that of this run alone");
        List<CurvePiece> pieces = curves.pieces(0, now - 10_000);
        assertArrayEquals(new float[] {3}, pieces.get(0).bed());
        assertEquals(20_000, pieces.get(0).from().millis());
    }
}
