package dev.lampwright.fuzz;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Some steps in sequence, after which the daemon must be right again.
 *
 * @param name of the target, and its number there
 * @param steps the steps
 * @param after what the printer reports then
 * @param promise how soon after the last step the light must be right
 */
record Attack(String name, List<Step> steps, Colour after, Duration promise) {
    /** Keeps a copy of the steps. */
    Attack {
        steps = List.copyOf(steps);
    }

    /**
     * The attack with a number; always the same.
     *
     * @param target the target
     * @param seed of the whole run
     * @param number which, from 0
     */
    static Attack of(Target target, long seed, int number) {
        SplittableRandom chance = new SplittableRandom(seed * 31 + target.name().hashCode() + 1_000_003L * number);
        int count = 1 + chance.nextInt(target.mostSteps());
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            steps.add(target.step(chance.split()));
        }
        Colour after = Oddities.pick(List.of(Colour.values()), chance);
        return new Attack(target.name() + " " + number, steps, after, target.promise());
    }

    /** The same with different steps. */
    Attack with(List<Step> others) {
        return new Attack(name, others, after, promise);
    }
}
