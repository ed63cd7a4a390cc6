package dev.lampwright.look;

/** Chance without a memory: the same question has the same answer, in any order, on any machine. */
final class Chance {
    /** Between the states of SplitMix64: 2⁶⁴ over the golden ratio. */
    private static final long STEP = 0x9E3779B97F4A7C15L;

    private Chance() {}

    /**
     * A number that is as good as random.
     *
     * @param seed of the layer
     * @param place for instance a pixel
     * @param time for instance a step
     * @return 0 up to but not including 1, evenly spread
     */
    static double share(long seed, long place, long time) {
        return share(root(seed, place), time);
    }

    /**
     * What of a question depends on seed and place alone, so that it need not be worked out at every time.
     *
     * @param seed of the layer
     * @param place for instance a pixel
     * @return what {@link #share(long, long)} goes on from
     */
    static long root(long seed, long place) {
        return mix(seed + STEP * place);
    }

    /**
     * The same as {@link #share(long, long, long)}.
     *
     * @param root {@link #root} of the seed and the place
     * @param time for instance a step
     * @return 0 up to but not including 1, evenly spread
     */
    static double share(long root, long time) {
        return (mix(root + STEP * time) >>> 11) * 0x1.0p-53;
    }

    /**
     * What a likelihood is for {@link #happens}.
     *
     * @param likelihood 0 to 1
     * @return how many of the numbers that {@link #share(long, long)} may be are below it
     */
    static long limit(double likelihood) {
        return (long) Math.ceil(likelihood * 0x1.0p53);
    }

    /**
     * Whether something happens by chance.
     *
     * @param root {@link #root} of the seed and the place
     * @param time for instance a step
     * @param limit {@link #limit} of its likelihood
     * @return whether {@link #share(long, long)} is below the likelihood
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
