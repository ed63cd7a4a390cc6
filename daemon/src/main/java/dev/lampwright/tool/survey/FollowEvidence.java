package dev.lampwright.tool.survey;

/**
 * A temperature goes towards its target and stays there, as a first-order response does: it rises while it is below, falls while it is
 * above, and does not rise while the heater is off.
 */
final class FollowEvidence implements PairEvidence {
    private static final double NEAR = 3;
    private static final double NEAR_SHARE = 0.03;
    private static final int LEAST_SAMPLES = 5;

    @Override
    public Clue weigh(Trail actual, Trail target) {
        Count count = new Count();
        Series series = actual.series();
        for (int i = 1; i < series.size(); i++) {
            double wanted = target.series().at(series.second(i - 1));
            count.add(series.value(i - 1), series.value(i) - series.value(i - 1), wanted);
        }
        int all = count.towards + count.away;
        if (all < LEAST_SAMPLES) {
            return Clue.NONE;
        }
        double share = (double) count.towards / all;
        boolean arrives = count.there > LEAST_SAMPLES;
        return new Clue(
                6 * share - 4 + (arrives ? 1.5 : 0),
                arrives ? "the one comes to the other and stays" : share > 0.9 ? "the one goes towards the other" : "");
    }

    private static final class Count {
        private int towards;
        private int away;
        private int there;

        void add(double value, double step, double wanted) {
            double gap = wanted - value;
            if (Double.isNaN(wanted)) {
                return;
            }
            if (wanted <= 0) {
                away += step > 0.5 ? 1 : 0;
                towards += step < 0 ? 1 : 0;
            } else if (Math.abs(gap) <= Math.max(NEAR, NEAR_SHARE * wanted)) {
                there++;
                towards++;
            } else if (step != 0) {
                towards += step > 0 == gap > 0 ? 1 : 0;
                away += step > 0 == gap > 0 ? 0 : 1;
            }
        }
    }
}
