package dev.lampwright.history;

import java.time.Instant;
import java.util.Arrays;

/** Temperatures and current at equal intervals of {@link Curves#STEP_MILLIS}; NaN for unknown. Immutable. */
public final class CurvePiece {
    private final Stamp from;
    private final float[] bed;
    private final float[] nozzle;
    private final float[] milliamps;

    /**
     * Takes arrays of equal length, which must not be modified afterwards.
     *
     * @param from the time of the first value
     * @param bed temperature of the bed in °C
     * @param nozzle temperature of the nozzle in °C
     * @param milliamps the most that the strip drew within the preceding step, in mA
     */
    CurvePiece(Stamp from, float[] bed, float[] nozzle, float[] milliamps) {
        this.from = from;
        this.bed = bed;
        this.nozzle = nozzle;
        this.milliamps = milliamps;
    }

    /** The time of the first value. */
    Stamp from() {
        return from;
    }

    /** The bed in °C; must not be modified. */
    float[] bed() {
        return bed;
    }

    /** The nozzle in °C; must not be modified. */
    float[] nozzle() {
        return nozzle;
    }

    /** The strip's current in mA; must not be modified. */
    float[] milliamps() {
        return milliamps;
    }

    /** How many values there are of each. */
    int length() {
        return bed.length;
    }

    /** The same with its time on the wall clock. */
    CurvePiece wall(long wallAhead) {
        return new CurvePiece(from.wall(wallAhead), bed, nozzle, milliamps);
    }

    /**
     * How many values there are of each temperature.
     *
     * @return 1 or more
     */
    public int values() {
        return length();
    }

    /**
     * When a value was.
     *
     * @param index which, from 0
     * @return the time, on the wall clock
     */
    public Instant at(int index) {
        return from.instant().plusMillis(index * Curves.STEP_MILLIS);
    }

    /**
     * The temperature of the bed.
     *
     * @param index which value, from 0
     * @return in °C; NaN for unknown
     */
    public double bedC(int index) {
        return bed[index];
    }

    /**
     * The temperature of the nozzle.
     *
     * @param index which value, from 0
     * @return in °C; NaN for unknown
     */
    public double nozzleC(int index) {
        return nozzle[index];
    }

    /** The newest values. */
    CurvePiece last(int count) {
        int left = Math.min(count, length());
        int first = length() - left;
        return new CurvePiece(
                new Stamp(from.millis() + first * Curves.STEP_MILLIS, from.ofThisRun()),
                Arrays.copyOfRange(bed, first, length()),
                Arrays.copyOfRange(nozzle, first, length()),
                Arrays.copyOfRange(milliamps, first, length()));
    }

    /** The time after the last value. */
    long endMillis() {
        return from.millis() + length() * Curves.STEP_MILLIS;
    }
}
