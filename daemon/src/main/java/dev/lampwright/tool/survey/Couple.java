package dev.lampwright.tool.survey;

import java.util.List;

/** Two roles that belong together: a value, and what it approaches. */
enum Couple {
    BED(Role.BED_ACTUAL, Role.BED_SETPOINT),
    NOZZLE(Role.NOZZLE_ACTUAL, Role.NOZZLE_SETPOINT),
    CHAMBER(Role.CHAMBER_ACTUAL, Role.CHAMBER_SETPOINT),
    COUNT(Role.DONE, Role.TOTAL);

    private static final PairEvidence SIBLINGS = new SiblingEvidence();
    private static final PairEvidence FOLLOWING = new FollowEvidence();
    private static final PairEvidence COUNTING = new CountUpEvidence();

    private final Role first;
    private final Role second;

    Couple(Role first, Role second) {
        this.first = first;
        this.second = second;
    }

    /** The value that approaches another. */
    Role first() {
        return first;
    }

    /** The target. */
    Role second() {
        return second;
    }

    /** The evidence that one value approaches the other in this way. */
    Judgement judge(Trail one, Trail other) {
        Judgement judgement = Judgement.OPEN;
        for (PairEvidence evidence : List.of(SIBLINGS, this == COUNT ? COUNTING : FOLLOWING)) {
            judgement = judgement.with(evidence.weigh(one, other));
        }
        return judgement;
    }
}
