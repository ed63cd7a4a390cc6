package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.List;
import java.util.Optional;

/** The unit of progress and times: as given with the number, or else as names and numbers suggest. */
final class UnitGuess {
    private static final List<Unit> TIMES = List.of(Unit.SECONDS, Unit.MINUTES, Unit.HOURS, Unit.MILLISECONDS);

    private static final double PACE_TOLERANCE = 0.25;

    /** Elapsed time is measured, remaining time is estimated. */
    private static final double CLOCK_TOLERANCE = 0.06;

    private static final double WHOLE_PERCENT = 100.5;
    private static final double WHOLE_PERMILLE = 1000;
    private static final double PERMILLE = 0.001;
    private static final double MINUTE_S = 60;

    private UnitGuess() {}

    /**
     * The unit for a role.
     *
     * @param trail what was seen of the value
     * @param role what it is
     * @return the unit, {@link Unit#OWN} if it is the role's own; and the scale
     */
    static Gauge of(Trail trail, Role role) {
        return switch (role) {
            case PROGRESS ->
                (trail.most() > WHOLE_PERCENT || saysPermille(trail)) && trail.unit() == Unit.OWN
                        ? new Gauge(Unit.OWN, PERMILLE)
                        : Gauge.of(progress(trail));
            case LEFT, ELAPSED -> Gauge.of(time(trail, role));
            default -> Gauge.PLAIN;
        };
    }

    /** Whether a number is too large to be progress in percent, and does not look like permille either. */
    static boolean isBeyond(Trail trail) {
        boolean permille = trail.whole()
                && trail.unit() == Unit.OWN
                && trail.most() <= WHOLE_PERMILLE
                && (trail.most() == WHOLE_PERMILLE || trail.names().speakOf(Concept.PROGRESS));
        double full = trail.unit() == Unit.PERMILLE ? WHOLE_PERMILLE : WHOLE_PERCENT;
        return trail.most() > full && !permille;
    }

    /** Its own name has the word. */
    private static boolean saysPermille(Trail trail) {
        return trail.whole() && trail.names().ownSpeaksOf(Concept.PERMILLE);
    }

    private static Unit progress(Trail trail) {
        if (trail.unit() == Unit.PERMILLE) {
            return Unit.PERMILLE;
        }
        if (trail.unit() == Unit.PERCENT || trail.most() > 1) {
            return Unit.PERCENT;
        }
        boolean fractions = trail.most() > 0 && !trail.whole();
        return fractions || trail.names().speakOf(Concept.SHARE) ? Unit.OWN : Unit.PERCENT;
    }

    /**
     * What is uncertain about the unit for a role.
     *
     * @param trail what was seen of the value
     * @param role what it is
     * @return a clause for the user; empty if nothing is uncertain
     */
    static Optional<String> doubt(Trail trail, Role role) {
        boolean open = role == Role.PROGRESS && trail.unit() == Unit.OWN && trail.most() <= 1;
        return open && progress(trail) == Unit.PERCENT
                ? Optional.of("percent is a guess, since nothing but " + heard(trail)
                        + " was heard; remove unit if it goes from 0 to 1, or listen while it prints")
                : Optional.empty();
    }

    private static String heard(Trail trail) {
        return trail.least() == trail.most()
                ? NumberText.number(trail.most())
                : NumberText.number(trail.least()) + " and " + NumberText.number(trail.most());
    }

    private static Unit time(Trail trail, Role role) {
        boolean written = trail.unit() != Unit.OWN
                && trail.unit().goesWith(role.quantity().orElseThrow());
        boolean stopwatch =
                trail.unit() == Unit.SHORT_CLOCK && pace(trail, role).isPresent();
        return written && !stopwatch
                ? trail.unit()
                : pace(trail, role).or(() -> named(trail)).orElse(Unit.OWN);
    }

    /**
     * The unit of a time by how fast it passes.
     *
     * @param trail what was seen of it
     * @param role time left or time elapsed
     * @return empty if it does not pass as time does
     */
    static Optional<Unit> pace(Trail trail, Role role) {
        Moves moves = Moves.of(trail.series());
        double perSecond = role == Role.LEFT ? moves.fallPerSecond() : moves.risePerSecond();
        double tolerance = role == Role.LEFT ? PACE_TOLERANCE : CLOCK_TOLERANCE;
        Optional<Unit> unit = TIMES.stream()
                .filter(time -> Math.abs(time.toOwn(perSecond) - 1) < tolerance)
                .findFirst();
        if (trail.unit() == Unit.SHORT_CLOCK && Math.abs(perSecond / MINUTE_S - 1) < PACE_TOLERANCE) {
            return Optional.of(Unit.STOPWATCH);
        }
        return !trail.unit().numeric() && unit.isPresent() ? Optional.of(trail.unit()) : unit;
    }

    private static Optional<Unit> named(Trail trail) {
        ValueName names = trail.names();
        if (names.speakOf(Concept.MILLISECONDS)) {
            return Optional.of(Unit.MILLISECONDS);
        }
        if (names.speakOf(Concept.MINUTES)) {
            return Optional.of(Unit.MINUTES);
        }
        return names.speakOf(Concept.HOURS) ? Optional.of(Unit.HOURS) : Optional.empty();
    }
}
