package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;
import java.util.List;
import java.util.Optional;

/** In which unit progress and times are told: as it stands with the number, or else as names and numbers tell. */
final class UnitGuess {
    private static final List<Unit> TIMES = List.of(Unit.SECONDS, Unit.MINUTES, Unit.HOURS, Unit.MILLISECONDS);

    private static final double PACE_TOLERANCE = 0.25;

    private UnitGuess() {}

    /**
     * The unit for a role.
     *
     * @param trail what was seen of the value
     * @param role what it is
     * @return the unit; {@link Unit#OWN} if it is the role's own
     */
    static Unit of(Trail trail, Role role) {
        return switch (role) {
            case PROGRESS -> progress(trail);
            case LEFT, ELAPSED -> time(trail, role);
            default -> Unit.OWN;
        };
    }

    private static Unit progress(Trail trail) {
        if (trail.unit() == Unit.PERCENT || trail.most() > 1) {
            return Unit.PERCENT;
        }
        boolean fractions = trail.most() > 0 && !trail.whole();
        return fractions || trail.names().speakOf(Concept.SHARE) ? Unit.OWN : Unit.PERCENT;
    }

    /**
     * What is not sure about the unit for a role.
     *
     * @param trail what was seen of the value
     * @param role what it is
     * @return a clause for the user; nothing if there is nothing to doubt
     */
    static Optional<String> doubt(Trail trail, Role role) {
        boolean open = role == Role.PROGRESS && trail.unit() == Unit.OWN && trail.most() <= 1;
        return open && progress(trail) == Unit.PERCENT
                ? Optional.of("percent is a guess, since nothing but " + heard(trail)
                        + " was heard; take unit out if it goes from 0 to 1, or listen while it prints")
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
        return written ? trail.unit() : pace(trail, role).or(() -> named(trail)).orElse(Unit.OWN);
    }

    /**
     * The unit of a time by how fast it passes.
     *
     * @param trail what was seen of it
     * @param role time left or time elapsed
     * @return nothing if it does not pass as time does
     */
    static Optional<Unit> pace(Trail trail, Role role) {
        Moves moves = Moves.of(trail.series());
        double perSecond = role == Role.LEFT ? moves.fallPerSecond() : moves.risePerSecond();
        Optional<Unit> unit = TIMES.stream()
                .filter(time -> Math.abs(time.toOwn(perSecond) - 1) < PACE_TOLERANCE)
                .findFirst();
        boolean asText = trail.unit() == Unit.ISO_8601 || trail.unit() == Unit.CLOCK;
        return asText && unit.isPresent() ? Optional.of(trail.unit()) : unit;
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
