package dev.lampwright.tool.survey;

import java.util.Optional;

/** A target stays the same for long and then changes at once; a temperature never jumps. */
final class StepEvidence implements Evidence {
    private static final int FEW = 6;
    private static final int MANY = 16;
    private static final double SELDOM = 0.1;
    private static final double OFTEN = 0.3;
    private static final double JUMP = 0.35;
    private static final double LEAST_RANGE = 5;

    @Override
    public Clue weigh(Trail trail, Role role) {
        Optional<HeatedPart> heater = HeatedPart.of(role);
        if (heater.filter(part -> role == part.target()).isPresent() && fluctuates(trail)) {
            return Clue.against(4);
        }
        double range = trail.most() - trail.least();
        if (heater.isEmpty()
                || !trail.numeric()
                || range < LEAST_RANGE
                || trail.series().size() < FEW) {
            return Clue.NONE;
        }
        Moves moves = Moves.of(trail.series());
        return role == heater.get().target() ? target(trail, moves) : actual(moves, range);
    }

    /** What differs from message to message is measured, however little it moves. */
    private static boolean fluctuates(Trail trail) {
        return trail.count() >= MANY && trail.changes() > OFTEN * trail.count();
    }

    private static Clue target(Trail trail, Moves moves) {
        if (moves.distinct() > MANY) {
            return Clue.against(4);
        }
        boolean steps = moves.distinct() <= FEW && trail.changes() <= Math.max(2, SELDOM * trail.count());
        return steps ? new Clue(1, "changed " + NumberText.times(trail.changes()) + " only") : Clue.NONE;
    }

    private static Clue actual(Moves moves, double range) {
        boolean jumps = moves.largest() > JUMP * range;
        if (moves.distinct() <= 3 && jumps) {
            return Clue.against(3);
        }
        return jumps ? Clue.NONE : new Clue(1, "moves without jumps");
    }
}
