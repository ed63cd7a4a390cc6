package dev.lampwright.signal;

import dev.lampwright.signal.HeatUpRecord.Telling;
import dev.lampwright.signal.RowOfBodies.Conduction;
import dev.lampwright.signal.RowOfBodies.Controlled;
import dev.lampwright.signal.RowOfBodies.Power;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Random heaters, determined by a seed. The estimate was developed with the lots {@link #TWO_BODIES} and {@link #CHAINS}; {@link #PLATES}
 * has heaters of another structure with other controllers and other reports, and was held out: nothing was chosen by it.
 */
enum HeaterLot {
    /** A heated body and one that is felt, heat lost by conduction and radiation, controllers with three terms or two points. */
    TWO_BODIES {
        @Override
        Heater heater(Use use, SplittableRandom chance) {
            double bodies = uniform(chance, 0.02, 0.12);
            return new RowOfBodies(
                    new Conduction(2, bodies, uniform(chance, 0.4, 0.9), 1, uniform(chance, 0, 0.4)),
                    new Power(logarithmic(chance, 1.15, 4), 0, 0, 0),
                    chance.nextDouble() < 0.35 ? Controlled.twoPoints(uniform(chance, 0, 2)) : threeTerms(use, chance),
                    uniform(chance, 0, 3),
                    uniform(chance, 0, 0.03));
        }

        private Controlled threeTerms(Use use, SplittableRandom chance) {
            return new Controlled(
                    logarithmic(chance, use.leastBandK, use.mostBandK),
                    uniform(chance, 0, 0.04),
                    uniform(chance, 0.05, 0.5),
                    0,
                    false);
        }

        @Override
        Telling telling(SplittableRandom chance) {
            double[] everyS = {1, 2, 5};
            double[] roundedToK = {0.01, 0.1, 1};
            return new Telling(
                    everyS[chance.nextInt(3)],
                    uniform(chance, 0, 0.5),
                    uniform(chance, 0.02, 0.3),
                    roundedToK[chance.nextInt(3)]);
        }

        @Override
        double warmShare(SplittableRandom chance) {
            return chance.nextDouble() < 0.8 ? 0 : uniform(chance, 0, 0.5);
        }
    },
    /**
     * Three to six bodies in a row, resistance that grows with temperature, a supply that sags, a sensor at any of them; bands with or
     * without an integral term and two points with hysteresis; reports each quarter of a second to each ten.
     */
    CHAINS {
        @Override
        Heater heater(Use use, SplittableRandom chance) {
            int bodies = 3 + chance.nextInt(4);
            boolean sags = chance.nextDouble() < 0.3;
            return new RowOfBodies(
                    new Conduction(
                            bodies,
                            logarithmic(chance, 0.01, 0.08),
                            uniform(chance, 0.2, 0.6),
                            1 + chance.nextInt(bodies - 1),
                            uniform(chance, 0, 0.5)),
                    new Power(
                            1 + logarithmic(chance, 0.3, 2.5),
                            uniform(chance, 0, 0.2),
                            sags ? uniform(chance, 0, 0.1) : 0,
                            uniform(chance, 0.05, 0.95)),
                    controlled(use, chance),
                    uniform(chance, 0, 2),
                    logarithmic(chance, 0.002, 0.05));
        }

        private Controlled controlled(Use use, SplittableRandom chance) {
            double which = chance.nextDouble();
            if (which < 0.3) {
                return Controlled.twoPoints(uniform(chance, 0, 1.5));
            }
            double bandK = uniform(chance, use.leastBandK, use.mostBandK);
            return which < 0.55
                    ? new Controlled(bandK, 0, 0, 0, true)
                    : new Controlled(bandK, uniform(chance, 0, 0.05), uniform(chance, 0.05, 0.4), 0, false);
        }

        @Override
        Telling telling(SplittableRandom chance) {
            double[] roundedToK = {0.01, 0.05, 0.1, 0.25, 0.5, 1};
            return new Telling(
                    logarithmic(chance, 0.25, 10),
                    uniform(chance, 0, 0.8),
                    logarithmic(chance, 0.01, 0.5),
                    roundedToK[chance.nextInt(6)]);
        }

        @Override
        double warmShare(SplittableRandom chance) {
            return chance.nextDouble() < 0.7 ? 0 : uniform(chance, 0, 0.6);
        }
    },
    /** Plates in layers, with controllers that are tuned by a published rule, power in pulses and reports each half second to each six. */
    PLATES {
        @Override
        Heater heater(Use use, SplittableRandom chance) {
            double which = chance.nextDouble();
            return new HeatedPlate(
                    logarithmic(chance, 0.01, 0.15),
                    chance.nextDouble(),
                    logarithmic(chance, 0.3, 4),
                    uniform(chance, 0, 2),
                    logarithmic(chance, use.leastHottestK, use.mostHottestK),
                    uniform(chance, 0, 0.3),
                    chance.nextBoolean() ? 0 : uniform(chance, 0.3, 2),
                    which < 0.3
                            ? HeatedPlate.Controller.TWO_POINTS
                            : which < 0.55 ? HeatedPlate.Controller.BAND : HeatedPlate.Controller.INTEGRAL,
                    uniform(chance, 1, 4),
                    uniform(chance, 0.2, 2));
        }

        @Override
        Telling telling(SplittableRandom chance) {
            double[] roundedToK = {0.01, 0.1, 0.5, 1};
            return new Telling(
                    logarithmic(chance, 0.5, 6),
                    uniform(chance, 0, 0.6),
                    logarithmic(chance, 0.01, 0.4),
                    roundedToK[chance.nextInt(4)]);
        }

        @Override
        double warmShare(SplittableRandom chance) {
            return chance.nextDouble() < 0.75 ? 0 : uniform(chance, 0, 0.6);
        }
    };

    static final double LONGEST_S = 2 * 3600;
    private static final double SHORTEST_S = 15;

    abstract Heater heater(Use use, SplittableRandom chance);

    abstract Telling telling(SplittableRandom chance);

    /** Share of the way from room temperature to the target that it is already warm. */
    abstract double warmShare(SplittableRandom chance);

    /** The use of a random heater. */
    enum Use {
        BED(45, 120, 0.1, 0.6, 1.5, 12, 90, 220),
        NOZZLE(180, 300, 1, 5, 3, 25, 300, 650),
        CHAMBER(40, 75, 0.02, 0.1, 1, 5, 45, 110);

        private final double leastC;
        private final double mostC;
        private final double leastKPerS;
        private final double mostKPerS;
        private final double leastBandK;
        private final double mostBandK;
        private final double leastHottestK;
        private final double mostHottestK;

        Use(
                double leastC,
                double mostC,
                double leastKPerS,
                double mostKPerS,
                double leastBandK,
                double mostBandK,
                double leastHottestK,
                double mostHottestK) {
            this.leastC = leastC;
            this.mostC = mostC;
            this.leastKPerS = leastKPerS;
            this.mostKPerS = mostKPerS;
            this.leastBandK = leastBandK;
            this.mostBandK = mostBandK;
            this.leastHottestK = leastHottestK;
            this.mostHottestK = mostHottestK;
        }

        static Use any(SplittableRandom chance) {
            double which = chance.nextDouble();
            return which < 0.45 ? BED : which < 0.9 ? NOZZLE : CHAMBER;
        }
    }

    /** Two heat-ups of one heater. */
    record Pair(HeatUpRecord first, HeatUpRecord second, Use use, Scale scale, Heater heater, Telling telling) {}

    /**
     * Random heaters that reach their targets.
     *
     * @param count how many
     * @param seed what makes them
     * @return two heat-ups of each
     */
    List<Pair> heatUps(int count, long seed) {
        List<Pair> all = new ArrayList<>();
        for (long i = 0; all.size() < count; i++) {
            pair(new SplittableRandom(seed * 1_000_003 + i), all);
        }
        return all;
    }

    private void pair(SplittableRandom chance, List<Pair> all) {
        Use use = Use.any(chance);
        double roomC = uniform(chance, 15, 30);
        double targetC = Math.rint(uniform(chance, use.leastC, use.mostC));
        Heater heater = heater(use, chance);
        Telling telling = telling(chance);
        double slope = logarithmic(chance, use.leastKPerS, use.mostKPerS);
        Scale scale = new Scale(roomC, targetC, slope);
        HeatUpRecord first = heater.heatUp(scale, warmC(chance, scale), telling, chance);
        HeatUpRecord second = heater.heatUp(scale, warmC(chance, scale), telling, chance);
        if (isReached(first) && isReached(second)) {
            all.add(new Pair(first, second, use, scale, heater, telling));
        }
    }

    /**
     * Another heater of the lot that heats up from the same temperature to the same one, as if each reading were exact.
     *
     * @return empty if it does not reach it
     */
    Optional<HeatUpRecord> another(Pair like, double startC, SplittableRandom chance) {
        Use use = like.use();
        Scale scale =
                new Scale(like.scale().roomC, like.scale().targetC, logarithmic(chance, use.leastKPerS, use.mostKPerS));
        Telling exact = new Telling(scale.seconds() / 100, 0, 0, 1e-9);
        HeatUpRecord record = heater(use, chance).heatUp(scale, startC, exact, chance);
        return isReached(record) ? Optional.of(record) : Optional.empty();
    }

    private double warmC(SplittableRandom chance, Scale scale) {
        return scale.roomC + warmShare(chance) * scale.wayK();
    }

    private static boolean isReached(HeatUpRecord record) {
        return record.readyS() < LONGEST_S && record.readyS() > SHORTEST_S;
    }

    /** Where and how fast a heater heats; {@code slope} is what full power would do to all of it without any loss, in K/s. */
    record Scale(double roomC, double targetC, double slope) {
        double wayK() {
            return targetC - roomC;
        }

        double seconds() {
            return wayK() / slope;
        }
    }

    /** A random heater. */
    interface Heater {
        /**
         * Heats up once.
         *
         * @param scale where and how fast
         * @param startC its initial temperature
         * @param telling how it is reported
         * @param chance what makes the noise
         */
        HeatUpRecord heatUp(Scale scale, double startC, Telling telling, SplittableRandom chance);
    }

    private static double uniform(SplittableRandom chance, double least, double most) {
        return least + (most - least) * chance.nextDouble();
    }

    private static double logarithmic(SplittableRandom chance, double least, double most) {
        return least * Math.pow(most / least, chance.nextDouble());
    }
}
