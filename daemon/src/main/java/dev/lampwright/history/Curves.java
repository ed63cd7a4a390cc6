package dev.lampwright.history;

import java.util.ArrayList;
import java.util.List;

/**
 * Curves of the last six hours, of this run and earlier ones, in arrays that do not grow. Each run has its own piece, so that setting the
 * wall clock moves only what this run has seen. For one thread.
 */
final class Curves {
    /** From one value to the next, in ms. */
    static final long STEP_MILLIS = 10_000;

    /** Six hours. */
    static final int MOST = 2160;

    private final float[] bed = new float[MOST];
    private final float[] nozzle = new float[MOST];
    private final float[] milliamps = new float[MOST];
    private List<CurvePiece> before = List.of();
    private long nextMillis;
    private long count;
    private float most = Float.NaN;

    /**
     * Adds values. Values within one step are combined: the last temperature, the highest current.
     *
     * @param atMillis time of this run, in ms
     * @param bedC temperature of the bed in °C; NaN for unknown
     * @param nozzleC temperature of the nozzle in °C; NaN for unknown
     * @param current of the strip, in mA
     */
    void add(long atMillis, double bedC, double nozzleC, int current) {
        if (count == 0) {
            nextMillis = atMillis;
        }
        most = Float.isNaN(most) ? current : Math.max(most, current);
        long late = (atMillis - nextMillis) / STEP_MILLIS;
        for (long left = Math.min(late, MOST); left > 0; left--) {
            put(Float.NaN, Float.NaN, Float.NaN);
        }
        if (late > MOST) {
            nextMillis += (late - MOST) * STEP_MILLIS;
        }
        if (atMillis >= nextMillis) {
            put(tenths(bedC), tenths(nozzleC), most);
            most = Float.NaN;
        }
    }

    private void put(float bedC, float nozzleC, float current) {
        int at = (int) (count % MOST);
        bed[at] = bedC;
        nozzle[at] = nozzleC;
        milliamps[at] = current;
        count++;
        nextMillis += STEP_MILLIS;
    }

    private static float tenths(double value) {
        return Double.isNaN(value) ? Float.NaN : Math.round(value * 10) / 10f;
    }

    /** Restores what earlier runs have seen, the oldest first. */
    void restore(List<CurvePiece> pieces) {
        before = List.copyOf(pieces);
    }

    /**
     * All pieces, on the wall clock.
     *
     * @param wallAhead as in {@link Stamp#wall(long)}
     * @param nowMillis time of this run, in ms
     * @return the oldest first, at most {@link #MOST} values and none older than that
     */
    List<CurvePiece> pieces(long wallAhead, long nowMillis) {
        List<CurvePiece> all = new ArrayList<>(before);
        all.add(own().wall(wallAhead));
        long oldest = nowMillis + wallAhead - MOST * STEP_MILLIS;
        int room = MOST;
        List<CurvePiece> kept = new ArrayList<>();
        for (int i = all.size() - 1; i >= 0 && room > 0; i--) {
            CurvePiece piece = all.get(i);
            long young = Math.max(0, (piece.endMillis() - oldest) / STEP_MILLIS);
            CurvePiece part = piece.last((int) Math.min(room, young));
            if (part.length() > 0) {
                kept.add(0, part);
                room -= part.length();
            }
        }
        return List.copyOf(kept);
    }

    private CurvePiece own() {
        int length = (int) Math.min(count, MOST);
        return new CurvePiece(
                new Stamp(nextMillis - length * STEP_MILLIS, true),
                newest(bed, length),
                newest(nozzle, length),
                newest(milliamps, length));
    }

    private float[] newest(float[] ring, int length) {
        float[] newest = new float[length];
        for (int i = 0; i < length; i++) {
            newest[i] = ring[(int) ((count - length + i) % MOST)];
        }
        return newest;
    }
}
