package dev.lampwright.tool.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One judgement, in plain words.
 *
 * @param level how bad it is
 * @param subject what it is about
 * @param what what was found, with its numbers
 * @param remedy the change that fixes it; empty where nothing needs fixing
 * @param figure the number that was judged
 * @param assumed whether it judges something that nobody told, and that was assumed
 */
public record Verdict(Severity level, String subject, String what, String remedy, Figure figure, boolean assumed) {
    /** From here on two digits after the point tell nothing. */
    private static final double LARGE = 100;

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

    /** The worst first; of the same level what was told before what is assumed, then that which uses most of what is allowed. */
    public static final Comparator<Verdict> WORST_FIRST = Comparator.comparing(Verdict::level)
            .thenComparing(Verdict::assumed)
            .thenComparing(v -> v.figure.used(), Comparator.reverseOrder());

    /** A verdict on something that was told. */
    Verdict(Severity level, String subject, String what, String remedy, Figure figure) {
        this(level, subject, what, remedy, figure, false);
    }

    /**
     * The same about something that was assumed.
     *
     * @param yes whether it was
     * @return the verdict
     */
    Verdict assumedIf(boolean yes) {
        return new Verdict(level, subject, what, remedy, figure, yes);
    }

    /**
     * What was allowed, and by what.
     *
     * @return for instance {@code [3.00 A at most: its rating; margin 12 %]}; without number and margin where nothing was judged
     */
    public String limit() {
        if (level == Severity.OPEN) {
            return "[" + figure.source() + "]";
        }
        return "[" + FigureText.fixed(figure.limit(), figure.limit() < LARGE ? 2 : 0) + " " + figure.unit()
                + (figure.least() ? " at least: " : " at most: ") + figure.source() + "; margin "
                + FigureText.percent(figure.margin()) + "]";
    }

    /** What is judged, and whether it rests on something assumed. */
    String title() {
        return subject + (assumed ? " (assumed)" : "");
    }

    /**
     * The whole of it in one short line: level, subject, the number with its limit, and the remedy.
     *
     * @return for instance {@code OVER fuse of work: 4.00 A, at most 3.00 A (its rating) → use a connector rated at least 4.0 A}
     */
    public String line() {
        String number = FigureText.fixed(figure.value(), 2) + " " + figure.unit() + ", "
                + (figure.least() ? "at least " : "at most ") + FigureText.fixed(figure.limit(), 2) + " "
                + figure.unit()
                + " (" + figure.source() + ")";
        String found = level == Severity.OPEN ? "not in the file" : number;
        return level + " " + title() + ": " + found + (remedy.isEmpty() ? "" : " → " + remedy);
    }

    /**
     * Sorts verdicts, the worst first; but the first place has the worst of those that rest on what was told.
     *
     * @param verdicts verdicts in any order
     * @return a sorted copy
     */
    static List<Verdict> sorted(List<Verdict> verdicts) {
        List<Verdict> sorted = new ArrayList<>(verdicts);
        sorted.sort(WORST_FIRST);
        sorted.stream().filter(verdict -> !verdict.assumed).findFirst().ifPresent(first -> {
            sorted.remove(first);
            sorted.add(0, first);
        });
        return List.copyOf(sorted);
    }

    /**
     * A number and its limit.
     *
     * @param value what is
     * @param limit what may be
     * @param least whether the limit is the least that is right; else it is the most
     * @param unit unit of both
     * @param source where the limit comes from, in a few words: a standard, a data sheet, common practice, or that it is assumed
     */
    public record Figure(double value, double limit, boolean least, String unit, String source) {
        /** Differences as small as this are rounding: 8.00 A on a part rated 8.00 A is within its rating. */
        private static final double NOISE = 1e-9;

        /**
         * A number that must not be more than its limit.
         *
         * @param value what is
         * @param limit the most
         * @param unit unit of both
         * @param source where the limit comes from
         * @return the figure
         */
        static Figure atMost(double value, double limit, String unit, String source) {
            return new Figure(value, limit, false, unit, source);
        }

        /**
         * A number that must not be less than its limit.
         *
         * @param value what is
         * @param limit the least
         * @param unit unit of both
         * @param source where the limit comes from
         * @return the figure
         */
        static Figure atLeast(double value, double limit, String unit, String source) {
            return new Figure(value, limit, true, unit, source);
        }

        /**
         * Share of what is allowed.
         *
         * @return 1 at the limit, more beyond it
         */
        public double used() {
            return least ? limit / Math.max(value, Double.MIN_NORMAL) : value / Math.max(limit, Double.MIN_NORMAL);
        }

        /**
         * Whether no more than a share of what is allowed is used.
         *
         * @param share the share, 1 for all of it
         * @return true also if it is more by no more than rounding
         */
        boolean within(double share) {
            return used() <= share * (1 + NOISE);
        }

        /**
         * What is left to the limit.
         *
         * @return share of the limit; negative beyond it, down to −1 for a least
         */
        public double margin() {
            double bound = Math.max(limit, Double.MIN_NORMAL);
            return least ? Math.max(0, value) / bound - 1 : 1 - value / bound;
        }
    }
}
