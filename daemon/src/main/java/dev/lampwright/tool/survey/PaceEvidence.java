package dev.lampwright.tool.survey;

/** The time left falls, and the time since the beginning rises, as fast as time passes, in one unit or another. */
final class PaceEvidence implements Evidence {
    @Override
    public Clue weigh(Trail trail, Role role) {
        if (!trail.numeric() || (role != Role.LEFT && role != Role.ELAPSED)) {
            return Clue.NONE;
        }
        return UnitGuess.pace(trail, role)
                .map(unit -> new Clue(
                        2,
                        "goes " + (role == Role.LEFT ? "down" : "up") + " with time, in "
                                + (unit.word().isEmpty() ? "s" : unit.word())))
                .orElse(Clue.NONE);
    }
}
