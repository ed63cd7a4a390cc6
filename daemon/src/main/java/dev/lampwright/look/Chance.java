package dev.lampwright.look;

/** Randomness without state: the same question has the same answer, in any order, on any machine. */
final class Chance {
    /** The step between states of SplitMix64: 2⁶⁴ divided by the golden ratio. */
    private static final long STEP = 0x9E3779B97F4A7C15L;

    private Chance() {}

    /**
     * A pseudorandom number.
     *
     * @param seed of the layer
     * @param place for example a pixel
     * @param time for example a step
     * @return 0 up to but not including 1, evenly spread
     */
    static double share(long seed, long place, long time) {
        return share(root(seed, place), time);
    }

    /**
     * The part of the calculation that depends on seed and place alone, so that it is not repeated for every time.
     *
     * @param seed of the layer
     * @param place for example a pixel
     * @return the starting point for {@link #share(long, long)}
     */
    static long root(long seed, long place) {
        return mix(seed + STEP * place);
    }

    /**
     * The same as {@link #share(long, long, long)}.
     *
     * @param root {@link #root} of the seed and the place
     * @param time for example a step
     * @return 0 up to but not including 1, evenly spread
     */
    static double share(long root, long time) {
        return (mix(root + STEP * time) >>> 11) * 0x1.0p-53;
    }

    /**
     * Converts a probability for {@link #happens}.
     *
     * @param likelihood 0 to 1
     * @return how many of the possible values of {@link #share(long, long)} are below it
     */
    static long limit(double likelihood) {
        return (long) Math.ceil(likelihood * 0x1.0p53);
    }

    /**
     * Whether something happens at random.
     *
     * @param root {@link #root} of the seed and the place
     * @param time for example a step
     * @param limit {@link #limit} of its probability
     * @return whether {@link #share(long, long)} is below the probability
     */
    static boolean happens(long root, long time, long limit) {
        return (mix(root + STEP * time) >>> 11) < limit;
    }

    /** The output function of SplitMix64: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014. */
    private static long mix(long value) {
        long z = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
