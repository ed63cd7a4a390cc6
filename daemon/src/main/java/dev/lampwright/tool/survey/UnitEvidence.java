package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;

/** The unit that stands with a number. */
final class UnitEvidence implements Evidence {
    @Override
    public Clue weigh(Trail trail, Role role) {
        if (trail.unit() == Unit.OWN || role.quantity().isEmpty()) {
            return Clue.NONE;
        }
        return trail.unit().goesWith(role.quantity().get())
                ? new Clue(1.5, "is told in " + trail.unit().word())
                : Clue.against(6);
    }
}
