package dev.lampwright.signal;

import dev.lampwright.signal.HeatUpRecord.Telling;
import dev.lampwright.signal.HeaterModel.Build;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Prints how far off the time to ready is in the course of invented heat-ups; no test. Each is played fifty times with other noise, to
 * signals that have never seen the heater, and again to the same signals. To be run after {@code mvn test-compile}, from the folder
 * {@code daemon}; takes seconds:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.signal.ReadyFigures</pre>
 *
 * <p>At a quarter, a half and three quarters of the way it prints the mean time that was left, the mean of the absolute error as share of
 * it, and the largest error; and in how many of a hundred heat-ups the time was known by then.
 */
final class ReadyFigures {
    private static final int TIMES = 50;
    private static final double[] SHARES = {0.25, 0.5, 0.75};
    private static final String HEAD = "%-14s %5s %-7s | %-32s | %-32s%n";

    private ReadyFigures() {}

    /** A heater and what it is to reach. */
    private record HeatTo(String name, Build build, double targetC) {}

    /**
     * Reckons and prints.
     *
     * @param args none
     */
    public static void main(String[] args) {
        HeatTo[] heaters = {
            new HeatTo("bed", Build.BED, 60),
            new HeatTo("bed", Build.BED, 100),
            new HeatTo("slow bed", Build.SLOW_BED, 60),
            new HeatTo("slow bed", Build.SLOW_BED, 90),
            new HeatTo("nozzle", Build.NOZZLE, 215),
            new HeatTo("nozzle", Build.NOZZLE, 250),
            new HeatTo("slow nozzle", Build.SLOW_NOZZLE, 215),
            new HeatTo("slow nozzle", Build.SLOW_NOZZLE, 260),
        };
        Map<String, Telling> tellings = new LinkedHashMap<>();
        tellings.put("fine", Telling.FINE);
        tellings.put("noisy", Telling.NOISY);
        tellings.put("coarse", Telling.COARSE);
        tellings.put("seldom", Telling.SELDOM);
        tellings.forEach((name, telling) -> System.out.println(name + ": " + telling));
        for (int i = 0; i < SHARES.length; i++) {
            System.out.printf(Locale.ROOT, "%nat %.0f %%%n", 100 * SHARES[i]);
            System.out.printf(HEAD, "heater", "to °C", "told", "first time", "second time");
            for (HeatTo heater : heaters) {
                for (Map.Entry<String, Telling> telling : tellings.entrySet()) {
                    print(heater, telling.getKey(), telling.getValue(), SHARES[i]);
                }
            }
        }
    }

    private static void print(HeatTo heater, String name, Telling telling, double share) {
        Errors first = new Errors();
        Errors second = new Errors();
        for (int i = 0; i < TIMES; i++) {
            Player player = new Player();
            play(player, HeatUpRecord.of(heater.build, heater.targetC, telling, 2L * i), share, first);
            play(player, HeatUpRecord.of(heater.build, heater.targetC, telling, 2L * i + 1), share, second);
        }
        System.out.printf(
                Locale.ROOT,
                HEAD,
                heater.name,
                String.format(Locale.ROOT, "%.0f", heater.targetC),
                name,
                first,
                second);
    }

    private static void play(Player player, HeatUpRecord record, double share, Errors errors) {
        player.begin(record);
        double at = record.reaches(share);
        player.playUntil(record, at);
        errors.add(player.value("bed.ready_s", at), record.readyS() - at);
        player.playUntil(record, Double.POSITIVE_INFINITY);
    }

    /** What was told against what was true. */
    private static final class Errors {
        private int all;
        private int known;
        private double left;
        private double off;
        private double most;

        void add(double told, double truth) {
            all++;
            if (!Double.isNaN(told)) {
                known++;
                left += truth;
                off += Math.abs(told - truth);
                most = Math.abs(told - truth) > Math.abs(most) ? told - truth : most;
            }
        }

        @Override
        public String toString() {
            return known == 0
                    ? "unknown"
                    : String.format(
                            Locale.ROOT,
                            "%4.0f s %5.1f %% %+5.0f s, known %d",
                            left / known,
                            100 * off / left,
                            most,
                            100 * known / all);
        }
    }
}
