package dev.lampwright.tool.survey;

import java.util.HashSet;
import java.util.Set;

/**
 * How a series moves from one number to the next.
 *
 * @param distinct how many different numbers there are
 * @param ups how often the next was larger
 * @param downs how often it was smaller
 * @param largest the largest step, up or down
 * @param rise how far it went up in the longest stretch in which it never went down; 0 if it never went up
 * @param risePerSecond how fast, over that stretch
 * @param fall how far it went down in the longest stretch in which it never went up
 * @param fallPerSecond how fast, over that stretch
 */
record Moves(
        int distinct,
        int ups,
        int downs,
        double largest,
        double rise,
        double risePerSecond,
        double fall,
        double fallPerSecond) {
    /** Evaluates a series. */
    static Moves of(Series series) {
        Set<Double> distinct = new HashSet<>();
        int ups = 0;
        int downs = 0;
        double largest = 0;
        for (int i = 0; i < series.size(); i++) {
            distinct.add(series.value(i));
            double step = i == 0 ? 0 : series.value(i) - series.value(i - 1);
            ups += step > 0 ? 1 : 0;
            downs += step < 0 ? 1 : 0;
            largest = Math.max(largest, Math.abs(step));
        }
        Stretch rise = Stretch.longest(series, 1);
        Stretch fall = Stretch.longest(series, -1);
        return new Moves(
                distinct.size(), ups, downs, largest, rise.distance, rise.perSecond(), fall.distance, fall.perSecond());
    }

    /** A stretch in which a series moves one way only, from its first move to its last. */
    private record Stretch(double distance, double seconds) {
        double perSecond() {
            return seconds > 0 ? distance / seconds : 0;
        }

        static Stretch longest(Series series, int direction) {
            Stretch longest = new Stretch(0, 0);
            int from = 0;
            for (int i = 1; i <= series.size(); i++) {
                boolean ends = i == series.size() || direction * (series.value(i) - series.value(i - 1)) < 0;
                if (ends) {
                    Stretch stretch = between(series, from, i - 1, direction);
                    longest = stretch.distance > longest.distance ? stretch : longest;
                    from = i;
                }
            }
            return longest;
        }

        private static Stretch between(Series series, int from, int to, int direction) {
            int first = from;
            int last = to;
            while (first < to && series.value(first + 1) == series.value(from)) {
                first++;
            }
            while (last > first && series.value(last - 1) == series.value(to)) {
                last--;
            }
            double distance = direction * (series.value(last) - series.value(first));
            return new Stretch(Math.max(0, distance), series.second(last) - series.second(first));
        }
    }
}
