package dev.lampwright.tool.survey;

/** Progress, layers and the time since the beginning only rise; the time left only falls; a total stays constant. A new job starts over. */
final class TrendEvidence implements Evidence {
    private static final int LEAST_MOVES = 4;
    private static final double SELDOM = 0.1;
    private static final double OFTEN = 0.3;

    @Override
    public Clue weigh(Trail trail, Role role) {
        if (!trail.numeric()) {
            return Clue.NONE;
        }
        Moves moves = Moves.of(trail.series());
        int all = moves.ups() + moves.downs();
        return switch (role) {
            case PROGRESS, DONE, ELAPSED -> all < LEAST_MOVES ? Clue.NONE : trend(moves.downs(), all, "only rises");
            case LEFT -> all < LEAST_MOVES ? Clue.NONE : trend(moves.ups(), all, "only falls");
            case TOTAL -> all > Math.max(2, SELDOM * trail.series().size()) ? Clue.against(4) : Clue.NONE;
            default -> Clue.NONE;
        };
    }

    private static Clue trend(int wrong, int all, String reason) {
        if (wrong > OFTEN * all) {
            return Clue.against(4);
        }
        return wrong <= Math.max(1, SELDOM * all) ? new Clue(1.5, reason) : Clue.NONE;
    }
}
