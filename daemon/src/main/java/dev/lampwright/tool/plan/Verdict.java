package dev.lampwright.tool.plan;

import dev.lampwright.phrase.Phrase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * One judgement, in plain words.
 *
 * @param level how bad it is
 * @param about what it is about
 * @param what the finding, with its numbers
 * @param advice the change that fixes it; empty if nothing needs fixing
 * @param figure the number that was judged
 * @param assumed whether it judges an assumed value rather than a configured one
 */
public record Verdict(Severity level, Phrase about, String what, Phrase advice, Figure figure, boolean assumed) {
    /** Nothing needs fixing. */
    static final Phrase FINE = Phrase.plain("");

    /** From here on, two decimals are meaningless. */
    private static final double LARGE = 100;

    /** How bad a verdict is, the worst first. */
    public enum Severity {
        /** Above a rating: this must be changed. */
        OVER,
        /** Within the ratings, but with too little margin or against good practice. */
        CARE,
        /** Not judged, because a value is missing; the verdict says what would be acceptable. */
        OPEN,
        /** Good. */
        GOOD
    }

    /** The worst first; within a level configured values before assumed ones, then by the share of the limit that is used. */
    public static final Comparator<Verdict> WORST_FIRST = Comparator.comparing(Verdict::level)
            .thenComparing(Verdict::assumed)
            .thenComparing(v -> v.figure.used(), Comparator.reverseOrder());

    /** A verdict on a configured value. */
    Verdict(Severity level, Phrase about, String what, Phrase advice, Figure figure) {
        this(level, about, what, advice, figure, false);
    }

    /** The same with advice in English only. */
    Verdict(Severity level, Phrase about, String what, String advice, Figure figure) {
        this(level, about, what, Phrase.plain(advice), figure, false);
    }

    /**
     * What it is about.
     *
     * @return in English
     */
    public String subject() {
        return about.english();
    }

    /**
     * The change that fixes it.
     *
     * @return in English; empty if nothing needs fixing
     */
    public String remedy() {
        return advice.english();
    }

    /**
     * The same about an assumed value.
     *
     * @param yes whether it was
     * @return the verdict
     */
    Verdict assumedIf(boolean yes) {
        return new Verdict(level, about, what, advice, figure, yes);
    }

    /**
     * The limit, and its source.
     *
     * @return for example {@code [3.00 A at most: its rating; margin 12 %]}; without number and margin if nothing was judged
     */
    public String limit() {
        if (level == Severity.OPEN) {
            return "[" + figure.source() + "]";
        }
        return "[" + FigureText.fixed(figure.limit(), figure.limit() < LARGE ? 2 : 0) + " " + figure.unit()
                + (figure.least() ? " at least: " : " at most: ") + figure.source() + "; margin "
                + FigureText.percent(figure.margin()) + "]";
    }

    /** What is judged, and whether it is based on an assumption. */
    String title() {
        return subject() + (assumed ? " (assumed)" : "");
    }

    /**
     * The whole verdict in one short line: level, subject, the number with its limit, and the remedy.
     *
     * @return for example {@code OVER fuse of work: 4.00 A, at most 3.00 A (its rating) → use a connector rated at least 4.0 A}
     */
    public String line() {
        String number = FigureText.fixed(figure.value(), 2) + " " + figure.unit() + ", "
                + (figure.least() ? "at least " : "at most ") + FigureText.fixed(figure.limit(), 2) + " "
                + figure.unit()
                + " (" + figure.source() + ")";
        String found = level == Severity.OPEN ? "not in the file" : number;
        return level + " " + title() + ": " + found + (remedy().isEmpty() ? "" : " → " + remedy());
    }

    /**
     * The same with codes.
     *
     * @return without the source of the limit
     */
    public Phrase phrase() {
        return Phrase.of(
                remedy().isEmpty() ? "verdict" : "verdict_do",
                line(),
                "level",
                Phrase.of("verdict_" + level.name().toLowerCase(Locale.ROOT), level.name()),
                "subject",
                assumed ? Phrase.of("verdict_assumed", title(), "subject", about) : about,
                "found",
                found(),
                "advice",
                advice);
    }

    private Phrase found() {
        if (level == Severity.OPEN) {
            return Phrase.of("verdict_missing", "not in the file");
        }
        return Phrase.of(
                figure.least() ? "verdict_least" : "verdict_most",
                FigureText.fixed(figure.value(), 2),
                "value",
                hundredths(figure.value()),
                "limit",
                hundredths(figure.limit()),
                "unit",
                figure.unit());
    }

    private static double hundredths(double value) {
        return Math.round(value * 100) / 100.0;
    }

    /**
     * Sorts verdicts, the worst first; but the worst of those based on configured values comes first.
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
     * @param value the actual value
     * @param limit the limit
     * @param least true if the limit is a minimum, false if it is a maximum
     * @param unit unit of both
     * @param source where the limit comes from, in a few words: a standard, a data sheet, common practice, or that it is assumed
     */
    public record Figure(double value, double limit, boolean least, String unit, String source) {
        /** Differences this small are rounding: 8.00 A on a part rated 8.00 A is within its rating. */
        private static final double NOISE = 1e-9;

        /**
         * A number that must not exceed its limit.
         *
         * @param value the actual value
         * @param limit the maximum
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
         * @param value the actual value
         * @param limit the minimum
         * @param unit unit of both
         * @param source where the limit comes from
         * @return the figure
         */
        static Figure atLeast(double value, double limit, String unit, String source) {
            return new Figure(value, limit, true, unit, source);
        }

        /**
         * The share of the limit that is used.
         *
         * @return 1 at the limit, more beyond it
         */
        public double used() {
            return least ? limit / Math.max(value, Double.MIN_NORMAL) : value / Math.max(limit, Double.MIN_NORMAL);
        }

        /**
         * Whether no more than a share of the limit is used.
         *
         * @param share the share, 1 for all of it
         * @return true also if it exceeds that only by rounding
         */
        boolean within(double share) {
            return used() <= share * (1 + NOISE);
        }

        /**
         * The margin to the limit.
         *
         * @return share of the limit; negative beyond it, down to −1 for a minimum
         */
        public double margin() {
            double bound = Math.max(limit, Double.MIN_NORMAL);
            return least ? Math.max(0, value) / bound - 1 : 1 - value / bound;
        }
    }
}
