package dev.lampwright.look;

import java.util.Arrays;

/**
 * The heat equation on a bar that also cools to the room: ∂T/∂t = D ∂²T/∂x² − T/τ, one cell per pixel, no heat through the ends. Explicit
 * in time, central in space (the FTCS scheme of Crank, "The Mathematics of Diffusion"), with a fixed step, so that the same strikes give
 * the same bar on any machine.
 */
final class HeatBar {
    /** Length of a step, in s. */
    static final double STEP_S = 1.0 / 60;

    /** The scheme is stable up to a diffusion number of 1/2. */
    private static final double MOST_DIFFUSION = 0.5 / STEP_S;

    private final double number;
    private final double kept;

    /** The cells, and one more at each end that is always as hot as its neighbour, so that no heat goes through the end. */
    private double[] heat;

    private double[] next;

    /**
     * Creates a cold bar.
     *
     * @param cells how many
     * @param diffusion D, in pixels² a second, 0 to 30
     * @param timeConstantSeconds τ, the time in which heat falls to 1/e, in s; infinite for a bar that keeps its heat
     */
    HeatBar(int cells, double diffusion, double timeConstantSeconds) {
        number = Math.min(diffusion, MOST_DIFFUSION) * STEP_S;
        kept = Math.exp(-STEP_S / timeConstantSeconds);
        heat = new double[cells + 2];
        next = new double[cells + 2];
    }

    /** Lets one step pass. */
    void step() {
        double[] now = heat;
        double[] then = next;
        int end = now.length - 1;
        now[0] = now[1];
        now[end] = now[end - 1];
        for (int i = 1; i < end; i++) {
            then[i] = (now[i] + number * (now[i - 1] - 2 * now[i] + now[i + 1])) * kept;
        }
        heat = then;
        next = now;
    }

    /**
     * Heats one cell.
     *
     * @param cell which
     * @param kelvin by how much
     */
    void strike(int cell, double kelvin) {
        heat[cell + 1] += kelvin;
    }

    /**
     * How hot a cell is.
     *
     * @param cell which
     * @return K above the room
     */
    double heat(int cell) {
        return heat[cell + 1];
    }

    /** Cools the whole bar to room temperature. */
    void chill() {
        Arrays.fill(heat, 0);
    }
}
