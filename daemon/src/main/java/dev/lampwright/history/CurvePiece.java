package dev.lampwright.history;

import java.util.Arrays;

/** Temperatures and current at even times, {@link Curves#STEP_MILLIS} apart; NaN for unknown. Nothing changes in it. */
public final class CurvePiece {
    private final Stamp from;
    private final float[] bed;
    private final float[] nozzle;
    private final float[] milliamps;

    /**
     * Takes arrays of one length, which are not to be changed any more.
     *
     * @param from the time of the first value
     * @param bed temperature of the bed in °C
     * @param nozzle temperature of the nozzle in °C
     * @param milliamps the most that the strip took within the step before, in mA
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

    /** The bed in °C; not to be changed. */
    float[] bed() {
        return bed;
    }

    /** The nozzle in °C; not to be changed. */
    float[] nozzle() {
        return nozzle;
    }

    /** The strip's current in mA; not to be changed. */
    float[] milliamps() {
        return milliamps;
    }

    /** How many values there are of each. */
    int length() {
        return bed.length;
    }

    /** The same with its time on the clock on the wall. */
    CurvePiece wall(long wallAhead) {
        return new CurvePiece(from.wall(wallAhead), bed, nozzle, milliamps);
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
