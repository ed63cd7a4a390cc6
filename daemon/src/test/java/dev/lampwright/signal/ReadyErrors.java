package dev.lampwright.signal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** The errors of the time to ready: by shares of the way, and at every report. */
final class ReadyErrors {
    /** At these shares of the way the estimate is compared with the truth. */
    static final List<Double> MARKS = List.of(0.25, 0.5, 0.75);

    private final TreeMap<Double, Mark> marks = new TreeMap<>();
    private final List<Double> within = new ArrayList<>();

    /** Heat-ups of many heaters, the first of each or the second. */
    record OfLot(ReadyErrors first, ReadyErrors second) {}

    ReadyErrors() {
        MARKS.forEach(share -> marks.put(share, new Mark()));
    }

    /** Plays two heat-ups of each heater to signals that have never seen it. */
    static OfLot of(Collection<HeaterLot.Pair> lot) {
        OfLot errors = new OfLot(new ReadyErrors(), new ReadyErrors());
        for (HeaterLot.Pair pair : lot) {
            Player player = new Player();
            errors.first.play(player, pair.first());
            errors.second.play(player, pair.second());
        }
        return errors;
    }

    /** Plays a heat-up and compares. */
    void play(Player player, HeatUpRecord record) {
        player.begin(record);
        Map<Mark, Double> times = new HashMap<>();
        marks.forEach((share, mark) -> times.put(mark, record.reaches(share)));
        int all = 0;
        int good = 0;
        for (HeatUpRecord.Told told : record.readings()) {
            double at = told.seconds();
            player.play(told);
            double left = record.readyS() - at;
            double estimate = player.value("bed.ready_s", at);
            double error = player.value("bed.ready_error_s", at);
            times.forEach((mark, seconds) -> {
                if (seconds == at) {
                    mark.add(estimate, error, left);
                }
            });
            if (left > 0 && !Double.isNaN(estimate)) {
                all++;
                good += Math.abs(estimate - left) <= 2 * error ? 1 : 0;
            }
        }
        if (all > 0) {
            within.add((double) good / all);
        }
    }

    /** The errors at a share of the way. */
    Mark at(double share) {
        return marks.get(share);
    }

    /** Share of the reports at which the true time is within two standard errors, averaged over all heat-ups. */
    double within() {
        return within.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
    }

    /** Errors at a share of the way. */
    static final class Mark {
        private final List<Double> off = new ArrayList<>();
        private double sum;
        private int within;
        private int unknown;

        private void add(double estimate, double error, double left) {
            if (Double.isNaN(estimate)) {
                unknown++;
                return;
            }
            off.add(Math.abs(estimate - left) / left);
            sum += (estimate - left) / left;
            within += Math.abs(estimate - left) <= 2 * error ? 1 : 0;
        }

        /** The mean absolute error, as share of the time left. */
        double mean() {
            return off.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
        }

        /** Nine in ten errors are below this share. */
        double nineInTen() {
            Collections.sort(off);
            return off.get((int) (0.9 * off.size()));
        }

        /** The mean error with its sign, as share of the time left. */
        double bias() {
            return sum / off.size();
        }

        /** Share of the known within two standard errors. */
        double within() {
            return (double) within / off.size();
        }

        int unknown() {
            return unknown;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%3.0f %% (%3.0f %%, %+3.0f %%), %3.0f %% within, %d unknown",
                    100 * mean(),
                    100 * nineInTen(),
                    100 * bias(),
                    100 * within(),
                    unknown);
        }
    }
}
