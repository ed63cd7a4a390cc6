package dev.lampwright.tool.survey;

/** A count rises from 0 or 1, step by step, to a total that stays the same, and never exceeds it. */
final class CountUpEvidence implements PairEvidence {
    private static final int LEAST_STEPS = 5;
    private static final double SELDOM = 0.05;

    @Override
    public Clue weigh(Trail count, Trail total) {
        if (!count.whole() || !total.whole() || count.least() > 1 || total.most() < count.most()) {
            return Clue.against(4);
        }
        int steps = 0;
        int misses = 0;
        Series series = count.series();
        for (int i = 1; i < series.size(); i++) {
            boolean up = series.value(i) > series.value(i - 1);
            double before = total.series().at(series.second(i - 1));
            double now = total.series().at(series.second(i));
            steps += up ? 1 : 0;
            misses += series.value(i) > now || (up && before > 0 && before != now) ? 1 : 0;
        }
        if (misses > SELDOM * series.size()) {
            return Clue.against(4);
        }
        boolean all = count.most() == total.most();
        return steps < LEAST_STEPS
                ? Clue.NONE
                : new Clue(all ? 3.5 : 1, all ? "the one counts up to the other" : "the one stays below the other");
    }
}
