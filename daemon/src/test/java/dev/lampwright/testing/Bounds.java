package dev.lampwright.testing;

import static org.junit.jupiter.api.Assertions.fail;

/** Assertions on how large a number is. A failure reports the number and the bound. NaN is within no bound. */
public final class Bounds {
    private Bounds() {}

    /**
     * Asserts that a number is more than a bound.
     *
     * @param bound the lower bound, exclusive
     * @param actual the number
     */
    public static void assertAbove(double bound, double actual) {
        check(actual > bound, "above", bound, actual);
    }

    /**
     * Asserts that a whole number is more than a bound.
     *
     * @param bound the lower bound, exclusive
     * @param actual the number
     */
    public static void assertAbove(long bound, long actual) {
        check(actual > bound, "above", bound, actual);
    }

    /**
     * Asserts that a number is a bound or more.
     *
     * @param bound the minimum
     * @param actual the number
     */
    public static void assertAtLeast(double bound, double actual) {
        check(actual >= bound, "at least", bound, actual);
    }

    /**
     * Asserts that a whole number is a bound or more.
     *
     * @param bound the minimum
     * @param actual the number
     */
    public static void assertAtLeast(long bound, long actual) {
        check(actual >= bound, "at least", bound, actual);
    }

    /**
     * Asserts that a number is less than a bound.
     *
     * @param bound the upper bound, exclusive
     * @param actual the number
     */
    public static void assertBelow(double bound, double actual) {
        check(actual < bound, "below", bound, actual);
    }

    /**
     * Asserts that a whole number is less than a bound.
     *
     * @param bound the upper bound, exclusive
     * @param actual the number
     */
    public static void assertBelow(long bound, long actual) {
        check(actual < bound, "below", bound, actual);
    }

    /**
     * Asserts that a number is a bound or less.
     *
     * @param bound the maximum
     * @param actual the number
     */
    public static void assertAtMost(double bound, double actual) {
        check(actual <= bound, "at most", bound, actual);
    }

    /**
     * Asserts that a whole number is a bound or less.
     *
     * @param bound the maximum
     * @param actual the number
     */
    public static void assertAtMost(long bound, long actual) {
        check(actual <= bound, "at most", bound, actual);
    }

    private static void check(boolean right, String words, Number bound, Number actual) {
        if (!right) {
            fail("expected " + words + " " + bound + " but was " + actual);
        }
    }
}
