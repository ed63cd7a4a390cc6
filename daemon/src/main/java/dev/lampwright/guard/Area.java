package dev.lampwright.guard;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Lights anywhere that are judged together: the strip, a zone, or all the light in the room. A single region. */
final class Area extends Regions {
    private final int[] lights;
    private final long[] weights;
    /** Where each stretch of neighbouring lights with the same weight begins, and where the last one ends. */
    private final int[] stretches;

    /**
     * Creates an area.
     *
     * @param lights which lights, 1 or more
     * @param weights the weight of each, in any unit
     * @param depth how many transitions of each are remembered, see {@link Traces}
     * @throws IllegalArgumentException if all weights are 0
     */
    Area(int[] lights, long[] weights, int depth) {
        super(1, Arrays.stream(weights).sum(), depth);
        this.lights = lights.clone();
        this.weights = weights.clone();
        stretches = IntStream.rangeClosed(0, lights.length)
                .filter(i ->
                        i == 0 || i == lights.length || lights[i] != lights[i - 1] + 1 || weights[i] != weights[i - 1])
                .toArray();
    }

    /** An area in which all lights have the same weight. */
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

    @Override
    void look(LightMeasure measure) {
        long luminance = 0;
        long redness = 0;
        boolean red = false;
        for (int i = 0; i + 1 < stretches.length; i++) {
            int from = lights[stretches[i]];
            int to = from + stretches[i + 1] - stretches[i];
            long each = weights[stretches[i]];
            luminance += each * measure.luminance(from, to);
            redness += each * measure.redness(from, to);
            red |= measure.isAnyRed(from, to);
        }
        see(0, luminance, redness, NO_HUE, red);
    }
}
