package dev.lampwright.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Attack after attack, one target after another, with a check of everything after each. */
final class FuzzRun {
    private static final double WARM_UP_SHARE = 0.25;
    private static final double RUNTIMES_WARM_UP_S = 20;

    private final Settings settings;
    private final Map<String, Tally> tallies = new LinkedHashMap<>();
    private final List<String> failures = new ArrayList<>();
    private final List<String> figures = new ArrayList<>();
    private Rig rig;

    /**
     * What to do.
     *
     * @param length minimum duration, unless the number of attacks is reached before
     * @param attacks maximum number for each target
     * @param seed of everything random
     * @param targets which
     * @param first number of the first attack
     * @param tries how often a failed attack is repeated to find a smaller one
     * @param lenience factor on the promised time for the light to be right
     * @param folder for files
     */
    record Settings(
            Duration length,
            int attacks,
            long seed,
            List<Target> targets,
            int first,
            int tries,
            int lenience,
            Path folder) {}

    /** What was done to one target. */
    private static final class Tally {
        private int attacks;
        private int steps;
        private long refusals;
        private int failures;
    }

    /**
     * The result of a run.
     *
     * @param text for the reader, in lines
     * @param attacks the number of attacks
     * @param failures what was wrong, and how to reproduce it
     */
    record Summary(String text, int attacks, List<String> failures) {}

    FuzzRun(Settings settings) {
        this.settings = settings;
    }

    /** Runs it. */
    Summary run() throws IOException {
        long started = System.nanoTime();
        rig = newRig();
        try {
            for (int number = settings.first(); isGoingOn(number, started); number++) {
                for (Target target : settings.targets()) {
                    strike(target, number);
                }
            }
            rig.growth()
                    .forEach(growth -> failures.add(growth + "; " + repeated(settings.targets(), settings.first())));
        } finally {
            endRig();
        }
        return summary((System.nanoTime() - started) / 60e9);
    }

    private boolean isGoingOn(int number, long started) {
        return number - settings.first() < settings.attacks()
                && System.nanoTime() - started < settings.length().toNanos();
    }

    private Rig newRig() throws IOException {
        double warmUp = Math.max(RUNTIMES_WARM_UP_S, settings.length().toSeconds() * WARM_UP_SHARE);
        return new Rig(settings.folder(), warmUp);
    }

    private void endRig() {
        figures.add(rig.figures());
        rig.close();
    }

    private void strike(Target target, int number) throws IOException {
        Attack attack = Attack.of(target, settings.seed(), number);
        Tally tally = tallies.computeIfAbsent(target.name(), any -> new Tally());
        tally.attacks++;
        tally.steps += attack.steps().size();
        long refusedBefore = rig.refusals();
        Optional<String> wrong = wrong(rig, attack);
        tally.refusals += rig.refusals() - refusedBefore;
        if (wrong.isPresent()) {
            tally.failures++;
            endRig();
            report(attack, target, number, wrong.get());
            rig = newRig();
        }
    }

    /** What is wrong after an attack, if anything. */
    private Optional<String> wrong(Rig rig, Attack attack) throws IOException {
        List<String> wrong = new ArrayList<>();
        try {
            for (Step step : attack.steps()) {
                step.action().on(rig);
            }
        } catch (RuntimeException | Error e) {
            wrong.add(Oddities.shown(e + (e.getCause() == null ? "" : ", for " + e.getCause())));
        }
        wrong.addAll(rig.calm(attack.after(), attack.promise().multipliedBy(settings.lenience())));
        wrong.addAll(rig.rest());
        return wrong.isEmpty() ? Optional.empty() : Optional.of(String.join("\n    ", wrong));
    }

    private void report(Attack attack, Target target, int number, String wrong) {
        System.out.printf("FAILED %s:%n    %s%n", attack.name(), wrong);
        List<Step> smallest = new Shrinking(steps -> fails(attack.with(steps)), settings.tries()).of(attack.steps());
        StringBuilder text = new StringBuilder(attack.name() + ": " + wrong + "\n  smallest that was found:\n");
        smallest.forEach(step -> text.append("    ").append(step).append('\n'));
        text.append("  again: ").append(repeated(List.of(target), number)).append(" --attacks 1");
        failures.add(text.toString());
        System.out.println(text);
    }

    /** On a new rig, because the previous one has been through too much already. */
    private boolean fails(Attack attack) {
        try (Rig fresh = new Rig(settings.folder(), 0)) {
            return wrong(fresh, attack).isPresent();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String repeated(List<Target> targets, int number) {
        String only = targets.size() == 1 ? " --target " + targets.get(0).name() : "";
        return "--seed " + settings.seed() + only + " --first " + number;
    }

    private Summary summary(double minutes) {
        StringBuilder text =
                new StringBuilder(String.format("fuzz: %.1f minutes, seed %d%n", minutes, settings.seed()));
        int attacks = 0;
        for (Map.Entry<String, Tally> entry : tallies.entrySet()) {
            Tally tally = entry.getValue();
            attacks += tally.attacks;
            text.append(String.format(
                    "  %-10s %5d attacks, %6d steps, %6d of them refused in words, %d attacks failed%n",
                    entry.getKey(), tally.attacks, tally.steps, tally.refusals, tally.failures));
        }
        figures.forEach(line -> text.append("  ").append(line).append('\n'));
        failures.forEach(failure -> text.append("FAILED ").append(failure).append('\n'));
        return new Summary(text.toString(), attacks, List.copyOf(failures));
    }
}
