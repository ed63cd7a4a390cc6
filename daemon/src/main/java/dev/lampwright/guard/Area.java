package dev.lampwright.guard;

import java.util.Arrays;

/** Lights anywhere that are judged together: the strip, a zone, or all the light in the room. A single region. */
final class Area extends Regions {
    private final int[] lights;
    private final long[] weights;

    /**
     * Makes an area.
     *
     * @param lights which lights, 1 or more
     * @param weights what each counts for, in any unit
     * @param depth how many transitions of each are remembered, see {@link Traces}
     * @throws IllegalArgumentException if nothing counts
     */
    Area(int[] lights, long[] weights, int depth) {
        super(1, Arrays.stream(weights).sum(), depth);
        this.lights = lights.clone();
        this.weights = weights.clone();
    }

    /** An area whose lights all count for the same. */
    static Area ofEqual(int[] lights, int depth) {
        long[] weights = new long[lights.length];
        Arrays.fill(weights, 1);
        return new Area(lights, weights, depth);
    }

    @Override
    int size(int region) {
        return lights.length;
    }

    @Override
    int light(int region, int index) {
        return lights[index];
    }

    @Override
    long weight(int index) {
        return weights[index];
    }
}
