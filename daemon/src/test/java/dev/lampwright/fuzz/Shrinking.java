package dev.lampwright.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Makes a failed attack smaller for as long as it still fails: fewer steps, then smaller ones. */
final class Shrinking {
    private final Predicate<List<Step>> fails;
    private int triesLeft;

    /**
     * Starts with nothing tried.
     *
     * @param fails whether an attack with given steps fails
     * @param mostTries how often that may be called
     */
    Shrinking(Predicate<List<Step>> fails, int mostTries) {
        this.fails = fails;
        triesLeft = mostTries;
    }

    /** The smallest one found; the same steps if none was. */
    List<Step> of(List<Step> steps) {
        List<Step> smallest = fewer(steps);
        for (int i = 0; i < smallest.size(); i++) {
            smallest = smallerAt(smallest, i);
        }
        return smallest;
    }

    /** Leaves out half, a quarter and so on, down to single steps. */
    private List<Step> fewer(List<Step> steps) {
        List<Step> smallest = steps;
        for (int piece = (steps.size() + 1) / 2; piece > 0 && smallest.size() > 1; piece = piece / 2) {
            for (int from = 0; from < smallest.size() && smallest.size() > 1; ) {
                List<Step> rest = new ArrayList<>(smallest);
                rest.subList(from, Math.min(from + piece, rest.size())).clear();
                if (!rest.isEmpty() && stillFails(rest)) {
                    smallest = rest;
                } else {
                    from += piece;
                }
            }
        }
        return smallest;
    }

    private List<Step> smallerAt(List<Step> steps, int at) {
        for (Step part : steps.get(at).smaller().get()) {
            List<Step> others = new ArrayList<>(steps);
            others.set(at, part);
            if (stillFails(others)) {
                return smallerAt(others, at);
            }
        }
        return steps;
    }

    private boolean stillFails(List<Step> steps) {
        if (triesLeft == 0) {
            return false;
        }
        triesLeft--;
        return fails.test(steps);
    }
}
