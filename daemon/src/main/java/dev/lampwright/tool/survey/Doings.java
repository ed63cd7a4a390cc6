package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;

/** What the printer did at each time, as far as its readings show: equally spaced moments. */
final class Doings {
    private static final int MOST_MOMENTS = 2000;
    private static final double LEAST_STEP_S = 0.5;

    private final HeardHeat heat;
    private final Optional<HeardJob> job;
    private final double firstSecond;
    private final double stepSeconds;
    private final Doing[] moments;

    /**
     * Evaluates everything that was heard.
     *
     * @param readings the values whose role is known
     * @param trails all values
     */
    Doings(Map<Role, Trail> readings, Collection<Trail> trails) {
        heat = new HeardHeat(readings);
        job = HeardJob.of(readings);
        firstSecond = trails.stream().mapToDouble(Trail::firstSecond).min().orElse(0);
        double last = trails.stream().mapToDouble(Trail::lastSecond).max().orElse(0);
        stepSeconds = Math.max(LEAST_STEP_S, (last - firstSecond) / MOST_MOMENTS);
        moments = new Doing[1 + (int) ((last - firstSecond) / stepSeconds)];
        Arrays.setAll(moments, i -> at(firstSecond + i * stepSeconds));
    }

    private Doing at(double second) {
        if (job.map(one -> one.advances(second)).orElse(false)) {
            return Doing.ADVANCING;
        }
        return switch (heat.at(second)) {
            case BELOW -> Doing.HEATING;
            case OFF -> job.map(one -> one.whileOff(second)).orElse(Doing.RESTING);
            case THERE -> job.map(one -> one.whileHot(second)).orElse(Doing.UNCLEAR);
            case UNKNOWN -> job.map(one -> one.alone(second)).orElse(Doing.UNCLEAR);
        };
    }

    /** How long the job has to go on or to stand still before its number shows it, in s. */
    double seenAfterSeconds() {
        return job.map(HeardJob::seenAfterSeconds).orElse(0.0);
    }

    /** How long the printer did one thing, in s. */
    double seconds(Doing doing) {
        return stepSeconds * Arrays.stream(moments).filter(doing::equals).count();
    }

    /** How long something was true, in s. */
    double seconds(DoublePredicate what) {
        return stepSeconds
                * IntStream.range(0, moments.length)
                        .filter(i -> what.test(firstSecond + i * stepSeconds))
                        .count();
    }

    /**
     * The share of the moments with one thing at which another was true as well.
     *
     * @param one the one
     * @param other the other
     * @return 0 to 1; 0 if the one never was
     */
    double share(DoublePredicate one, DoublePredicate other) {
        int both = 0;
        int all = 0;
        for (int i = 0; i < moments.length; i++) {
            double second = firstSecond + i * stepSeconds;
            if (one.test(second)) {
                all++;
                both += other.test(second) ? 1 : 0;
            }
        }
        return all == 0 ? 0 : (double) both / all;
    }

    /**
     * What the printer did while a place reported each of its texts.
     *
     * @param runs what the place reported
     * @return for each text, in order, how long the printer did what, in s
     */
    List<Map<Doing, Double>> during(Runs runs) {
        List<Map<Doing, Double>> during = new ArrayList<>();
        runs.texts().forEach(text -> during.add(new EnumMap<>(Doing.class)));
        for (int i = 0; i < moments.length; i++) {
            int text = runs.at(firstSecond + i * stepSeconds);
            if (text >= 0) {
                during.get(text).merge(moments[i], stepSeconds, Double::sum);
            }
        }
        return during;
    }
}
