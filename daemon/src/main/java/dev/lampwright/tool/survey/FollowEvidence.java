package dev.lampwright.tool.survey;

/**
 * A temperature goes towards its target and stays there, as a first-order response does: it rises while it is below, falls while it is
 * above, and does not rise while the heater is off.
 */
final class FollowEvidence implements PairEvidence {
    private static final double NEAR = 3;
    private static final double NEAR_SHARE = 0.03;
    private static final int LEAST_SAMPLES = 5;

    /** Nine steps in ten go towards the target, starting far away, and the target is reached. */
    private static final double PROOF = 0.9;

    private static final int LEAST_FAR = 4;
    private static final double FAR = 4;
    /** How much of its whole range a temperature may fluctuate by itself. */
    private static final double RIPPLE_SHARE = 0.04;

    /** Whether one approaches the other from far away, no matter how far it has come. */
    static boolean follows(Trail actual, Trail target) {
        boolean counts = actual.whole() && actual.least() <= 1;
        if (counts || actual == target) {
            return false;
        }
        Count count = count(actual, target);
        return count.far >= LEAST_FAR && count.towards >= PROOF * (count.towards + count.away);
    }

    /** Whether there is no doubt: it comes from far away, and stays. */
    static boolean proves(Trail actual, Trail target) {
        return follows(actual, target) && count(actual, target).there > LEAST_SAMPLES;
    }

    @Override
    public Clue weigh(Trail actual, Trail target) {
        Count count = count(actual, target);
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

    /** A step is a change beyond the sensor's own ripple, however many messages it takes. */
    private static Count count(Trail actual, Trail target) {
        Count count = new Count();
        Series series = actual.series();
        double ripple = RIPPLE_SHARE * (actual.most() - actual.least());
        double anchor = series.size() == 0 ? 0 : series.value(0);
        for (int i = 1; i < series.size(); i++) {
            double wanted = target.series().at(series.second(i - 1));
            double step = series.value(i) - anchor;
            boolean moves = Math.abs(step) >= ripple;
            count.add(series.value(i - 1), moves ? step : 0, wanted);
            anchor = moves ? series.value(i) : anchor;
        }
        return count;
    }

    private static final class Count {
        private int towards;
        private int away;
        private int there;
        private int far;

        void add(double value, double step, double wanted) {
            double gap = wanted - value;
            if (Double.isNaN(wanted)) {
                return;
            }
            double near = Math.max(NEAR, NEAR_SHARE * wanted);
            far += wanted > 0 && gap > FAR * near ? 1 : 0;
            if (wanted <= 0) {
                away += step > 0.5 ? 1 : 0;
                towards += step < 0 ? 1 : 0;
            } else if (Math.abs(gap) <= near) {
                there++;
                towards++;
            } else if (step != 0) {
                towards += step > 0 == gap > 0 ? 1 : 0;
                away += step > 0 == gap > 0 ? 0 : 1;
            }
        }
    }
}
