package dev.lampwright.tool.survey;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Numbers that grow with the job, whatever their names: they stay at 0 while the heaters approach their targets, start to rise when the
 * heaters are there, and only rise from then on. Two that are next to each other, one of which stays constant, are the count and its total.
 */
final class JobGrowth {
    private static final int LEAST_STEPS = 5;
    private static final double LEAST_WAIT_S = 20;
    private static final double MOSTLY = 0.9;
    private static final double MOST = 1000;
    private static final int MOST_TOTALS = 4;
    private static final int LEAST_TOTAL = 2;
    private static final double USUAL_STEP = 1;

    private final HeardHeat heat;
    private final List<Trail> free;
    private final List<Trail> growing;

    /** A count and its total. */
    record Count(Trail done, Trail total) {}

    /**
     * Searches.
     *
     * @param readings the values whose role is known
     * @param free the printer's other values
     */
    JobGrowth(Map<Role, Trail> readings, Collection<Trail> free) {
        heat = new HeardHeat(readings);
        this.free = free.stream()
                .filter(trail -> trail.numeric() && !trail.names().ownSpeaksOf(Concept.FOREIGN))
                .sorted(Comparator.comparing(Trail::order))
                .toList();
        growing = this.free.stream().filter(this::grows).toList();
    }

    private boolean grows(Trail trail) {
        Steps steps = trail.steps();
        boolean may = trail.least() >= 0
                && trail.most() <= MOST
                && steps.size() > LEAST_STEPS
                && steps.value(0) == 0
                && UnitGuess.pace(trail, Role.ELAPSED).isEmpty()
                && UnitGuess.pace(trail, Role.LEFT).isEmpty();
        return may && waited(trail, steps.second(1)) && onlyRises(steps);
    }

    /** Whether it was reported during a heat-up, and was 0 throughout. */
    private boolean waited(Trail trail, double begin) {
        double from = begin - LEAST_WAIT_S;
        boolean hot = heat.at(begin) == HeardHeat.Stand.THERE;
        double heated = IntStream.rangeClosed((int) Math.ceil(trail.firstSecond()), (int) begin)
                .filter(second -> heat.at(second) == HeardHeat.Stand.BELOW)
                .count();
        return hot && trail.firstSecond() < from && heated >= LEAST_WAIT_S;
    }

    /** It may go back to 0 only at the end, or for a new job; and it rises while the heaters are at their targets. */
    private boolean onlyRises(Steps steps) {
        int ups = 0;
        int hot = 0;
        for (int i = 1; i < steps.size(); i++) {
            boolean up = steps.value(i) > steps.value(i - 1);
            if (!up && steps.value(i) != 0) {
                return false;
            }
            ups += up ? 1 : 0;
            hot += up && heat.at(steps.second(i)) == HeardHeat.Stand.THERE ? 1 : 0;
        }
        return hot >= MOSTLY * ups;
    }

    /** The only count that has a total. */
    Optional<Count> count() {
        List<Count> counts = growing.stream()
                .filter(done -> done.whole() && !NameEvidence.isShare(done.names()) && rise(done.steps()) <= USUAL_STEP)
                .flatMap(done ->
                        free.stream().filter(total -> isTotal(total, done)).map(total -> new Count(done, total)))
                .toList();
        return counts.size() == 1 ? Optional.of(counts.get(0)) : Optional.empty();
    }

    /** The largest step up. */
    private static double rise(Steps steps) {
        return IntStream.range(1, steps.size())
                .mapToDouble(i -> steps.value(i) - steps.value(i - 1))
                .max()
                .orElse(0);
    }

    private static boolean isTotal(Trail total, Trail done) {
        Steps steps = total.steps();
        boolean stays = total.whole() && steps.size() <= MOST_TOTALS && total.most() >= LEAST_TOTAL;
        if (!stays || total.most() < done.most()) {
            return false;
        }
        double begin = done.steps().second(1);
        double all = steps.at(begin);
        boolean same = IntStream.range(1, done.steps().size())
                .filter(i -> done.steps().value(i) > 0)
                .allMatch(i -> steps.at(done.steps().second(i)) == all);
        return same
                && all == total.most()
                && (done.names().isBeside(total.names()) || done.names().sharesAWord(total.names()));
    }

    /**
     * The only other one.
     *
     * @param count what has turned out to be a count
     */
    Optional<Trail> share(Optional<Count> count) {
        List<Trail> others = growing.stream()
                .filter(trail -> count.filter(one -> one.done == trail).isEmpty())
                .toList();
        return others.size() == 1 ? Optional.of(others.get(0)) : Optional.empty();
    }
}
