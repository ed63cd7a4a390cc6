package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the printer did at each time, as far as its readings show it. */
final class HeardPhases {
    private static final double BELOW = 4;
    private static final double SHARE = 0.7;
    private static final int LEAST_SAMPLES = 3;
    private static final double LEAST_WINDOW_S = 5;

    private final Map<Role, Trail> readings;
    private final Optional<Trail> job;
    private final double windowSeconds;

    /**
     * Prepares.
     *
     * @param readings the values whose role is known
     */
    HeardPhases(Map<Role, Trail> readings) {
        this.readings = new EnumMap<>(readings);
        job = List.of(Role.PROGRESS, Role.DONE).stream()
                .filter(readings::containsKey)
                .map(readings::get)
                .findFirst();
        windowSeconds = job.map(HeardPhases::window).orElse(LEAST_WINDOW_S);
    }

    /** Twice as long as it takes from one step to the next. */
    private static double window(Trail trail) {
        Moves moves = Moves.of(trail.series());
        double seconds = moves.risePerSecond() > 0 ? moves.rise() / moves.risePerSecond() : 0;
        return Math.max(LEAST_WINDOW_S, 2 * seconds / Math.max(1, moves.ups()));
    }

    /**
     * What the words of a value mean.
     *
     * @param trail the value
     * @return for each word during which the printer mostly did one thing, what that was
     */
    Map<String, PrinterState> meanings(Trail trail) {
        Map<String, PrinterState> meanings = new HashMap<>();
        for (int i = 0; i < trail.words().size(); i++) {
            String word = trail.words().get(i);
            meaning(trail.wordSeries(), i).ifPresent(state -> meanings.put(word, state));
        }
        return meanings;
    }

    private Optional<PrinterState> meaning(Series series, int word) {
        Map<PrinterState, Integer> votes = new EnumMap<>(PrinterState.class);
        int samples = 0;
        for (int i = 0; i < series.size(); i++) {
            if (series.value(i) == word) {
                samples++;
                at(series.second(i)).ifPresent(state -> votes.merge(state, 1, Integer::sum));
            }
        }
        int least = Math.max(LEAST_SAMPLES, (int) Math.ceil(SHARE * samples));
        return votes.entrySet().stream()
                .filter(vote -> vote.getValue() >= least)
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private Optional<PrinterState> at(double second) {
        if (job.isPresent() && moves(job.get().series(), second)) {
            return Optional.of(PrinterState.PRINTING);
        }
        if (heats(second)) {
            return Optional.of(PrinterState.WARMING);
        }
        if (!isOff(second)) {
            return Optional.empty();
        }
        double done = job.map(trail -> trail.series().at(second)).orElse(Double.NaN);
        if (done == 0) {
            return Optional.of(PrinterState.IDLE);
        }
        boolean all = job.isPresent() && done == job.get().most() && (done == 1 || done == 100);
        return all ? Optional.of(PrinterState.DONE) : Optional.empty();
    }

    private boolean moves(Series series, double second) {
        double now = series.at(second);
        return series.at(second + windowSeconds) > now && now > series.at(second - windowSeconds);
    }

    private boolean heats(double second) {
        for (HeatedPart heater : HeatedPart.values()) {
            Trail target = readings.get(heater.target());
            Trail actual = readings.get(heater.actual());
            boolean on = target != null && actual != null && target.series().at(second) > target.least();
            if (on && actual.series().at(second) < target.series().at(second) - BELOW) {
                return true;
            }
        }
        return false;
    }

    /** Whether there are heaters, and none is set to more than it ever was at least. */
    private boolean isOff(double second) {
        boolean any = false;
        for (HeatedPart heater : HeatedPart.values()) {
            Trail target = readings.get(heater.target());
            if (target != null) {
                any = true;
                if (target.series().at(second) > target.least()) {
                    return false;
                }
            }
        }
        return any;
    }
}
