package dev.lampwright.tool.plan;

import java.util.Comparator;

/**
 * One judgement, in plain words.
 *
 * @param level how bad it is
 * @param subject what it is about
 * @param what what was found, with its numbers
 * @param mend the change that mends it; empty where nothing needs mending
 * @param figure the number that was judged
 */
public record Verdict(Severity level, String subject, String what, String mend, Figure figure) {
    /** How bad a verdict is, the worst first. */
    public enum Severity {
        /** Outside of what something is rated for: this has to be changed. */
        OVER,
        /** Within the ratings, but with too little margin or against good practice. */
        CARE,
        /** Not judged, because something was not told; the verdict says what would be right. */
        OPEN,
        /** Good. */
        GOOD
    }

    /** The worst first; of the same level, that which uses most of what is allowed. */
    public static final Comparator<Verdict> WORST_FIRST =
            Comparator.comparing(Verdict::level).thenComparing(v -> v.figure.used(), Comparator.reverseOrder());

    /**
     * A number and its limit.
     *
     * @param value what is
     * @param limit what may be
     * @param least whether the limit is the least that is right; else it is the most
     * @param unit unit of both
     */
    public record Figure(double value, double limit, boolean least, String unit) {
        /**
         * A number that must not be more than its limit.
         *
         * @param value what is
         * @param limit the most
         * @param unit unit of both
         * @return the figure
         */
        static Figure atMost(double value, double limit, String unit) {
            return new Figure(value, limit, false, unit);
        }

        /**
         * A number that must not be less than its limit.
         *
         * @param value what is
         * @param limit the least
         * @param unit unit of both
         * @return the figure
         */
        static Figure atLeast(double value, double limit, String unit) {
            return new Figure(value, limit, true, unit);
        }

        /**
         * Share of what is allowed.
         *
         * @return 1 at the limit, more beyond it
         */
        public double used() {
            return least ? limit / Math.max(value, Double.MIN_NORMAL) : value / limit;
        }

        /**
         * What is left to the limit.
         *
         * @return share of the limit; negative beyond it, down to −1 for a least
         */
        public double margin() {
            return least ? Math.max(0, value) / limit - 1 : 1 - value / limit;
        }
    }
}
