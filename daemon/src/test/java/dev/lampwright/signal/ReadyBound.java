package dev.lampwright.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Prints how well the time to ready of an unknown heater can be estimated at best; not a test. Run it after {@code mvn package}, from the
 * folder {@code daemon}; takes minutes:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.signal.ReadyBound [COUNT [SEED [DRAWS]]]</pre>
 *
 * <p>For each of COUNT heaters (100) of each {@link HeaterLot} DRAWS others (1000) are made exactly as the lot is made, for the same
 * target. Each is fitted to the readings so far and weighed by how well it fits, with known noise; the estimate is the median of their
 * remaining times, of the kind with the smallest mean absolute error as a share of the time left. That is Bayes' rule with the truth as
 * prior, which no daemon has.
 */
final class ReadyBound {
    /** At least this many draws must count; if fewer do, the noise is assumed to be larger. */
    private static final double LEAST_DRAWS = 8;

    private final HeaterLot.Pair pair;
    private final List<HeatUpRecord> others = new ArrayList<>();

    /** What a drawn heater says about the time left, and how badly it fits: squared residuals, in units of the noise. */
    private record Vote(double leftS, double squares) {}

    private ReadyBound(HeaterLot lot, HeaterLot.Pair pair, int draws, SplittableRandom chance) {
        this.pair = pair;
        for (int i = 0; i < draws; i++) {
            lot.another(pair, pair.first().startC(), chance).ifPresent(others::add);
        }
    }

    /**
     * Calculates and prints.
     *
     * @param args how many heaters, the seed, and how many draws
     */
    public static void main(String[] args) {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : 100;
        long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
        int draws = args.length > 2 ? Integer.parseInt(args[2]) : 1000;
        for (HeaterLot lot : HeaterLot.values()) {
            double[] sums = new double[ReadyErrors.MARKS.size()];
            for (HeaterLot.Pair pair : lot.heatUps(count, seed)) {
                ReadyBound bound = new ReadyBound(lot, pair, draws, new SplittableRandom(seed + 77));
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += bound.error(ReadyErrors.MARKS.get(i)) / count;
                }
            }
            System.out.printf(
                    Locale.ROOT,
                    "%s, %d heaters, seed %d: %s at %s of the way%n",
                    lot,
                    count,
                    seed,
                    Arrays.toString(Arrays.stream(sums)
                            .mapToObj(sum -> String.format(Locale.ROOT, "%.1f %%", 100 * sum))
                            .toArray()),
                    ReadyErrors.MARKS);
        }
    }

    private double error(double share) {
        HeatUpRecord record = pair.first();
        double now = record.reaches(share);
        List<HeatUpRecord.Told> seen = record.readings().stream()
                .filter(told -> told.seconds() <= now)
                .filter(told ->
                        told.celsius() > record.startC() + Math.max(1, 0.02 * (record.targetC() - record.startC())))
                .toList();
        List<Vote> votes = new ArrayList<>();
        for (HeatUpRecord other : others) {
            lay(other, seen, now).ifPresent(votes::add);
        }
        double left = record.readyS() - now;
        return Math.abs(median(votes) - left) / left;
    }

    /** Fits a drawn heater to the readings, with free beginning and speed. */
    private Optional<Vote> lay(HeatUpRecord other, List<HeatUpRecord.Told> seen, double now) {
        WeightedLine line = new WeightedLine();
        for (HeatUpRecord.Told told : seen) {
            double slope = slope(other, told.celsius());
            line.add(when(other, told.celsius()), told.seconds() - now, slope * slope);
        }
        double unit = line.slope();
        if (!(unit > 0)) {
            return Optional.empty();
        }
        double noise =
                Math.pow(pair.telling().noiseK(), 2) + Math.pow(pair.telling().roundedToK(), 2) / 12;
        return Optional.of(new Vote(Math.max(0.1, line.at(other.readyS())), line.rest() / (unit * unit) / noise));
    }

    private static int before(HeatUpRecord record, double celsius) {
        List<HeatUpRecord.Told> readings = record.readings();
        int low = 0;
        int high = readings.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (readings.get(middle).celsius() < celsius) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double slope(HeatUpRecord record, double celsius) {
        int i = before(record, celsius);
        HeatUpRecord.Told a = record.readings().get(i);
        HeatUpRecord.Told b = record.readings().get(i + 1);
        return Math.max(1e-9, (b.celsius() - a.celsius()) / (b.seconds() - a.seconds()));
    }

    private static double when(HeatUpRecord record, double celsius) {
        HeatUpRecord.Told a = record.readings().get(before(record, celsius));
        return a.seconds() + (celsius - a.celsius()) / slope(record, celsius);
    }

    /** The median with the weights that minimise the mean absolute error as a share of the truth: likelihood ÷ time. */
    private static double median(List<Vote> votes) {
        double best = votes.stream().mapToDouble(Vote::squares).min().orElseThrow();
        double widened = 1;
        while (counting(votes, best, widened) < LEAST_DRAWS) {
            widened *= 1.3;
        }
        double wide = widened;
        List<Vote> sorted =
                votes.stream().sorted(Comparator.comparingDouble(Vote::leftS)).toList();
        double all = sorted.stream()
                .mapToDouble(vote -> weight(vote, best, wide) / vote.leftS)
                .sum();
        double sum = 0;
        for (Vote vote : sorted) {
            sum += weight(vote, best, wide) / vote.leftS;
            if (sum >= all / 2) {
                return vote.leftS;
            }
        }
        throw new IllegalStateException("no votes");
    }

    private static double weight(Vote vote, double best, double widened) {
        return Math.exp(-(vote.squares - best) / (2 * widened));
    }

    /** How many draws count, as if they counted equally (Kish's effective sample size). */
    private static double counting(List<Vote> votes, double best, double widened) {
        double sum = 0;
        double squares = 0;
        for (Vote vote : votes) {
            double weight = weight(vote, best, widened);
            sum += weight;
            squares += weight * weight;
        }
        return sum * sum / squares;
    }
}
