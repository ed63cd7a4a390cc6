package dev.lampwright.tool.survey;

/** When a number became another one, thinned out as a {@link Series} is; each step that turns back is kept. */
final class Steps {
    private static final int MOST = 512;

    private final Series kept = new Series(MOST);
    private double last = Double.NaN;
    private double direction;

    /**
     * Takes a number in.
     *
     * @param second when it came, in s since any moment; never before the one before
     * @param value the number
     */
    void add(double second, double value) {
        if (value == last) {
            return;
        }
        boolean turns = (value - last) * direction < 0;
        direction = value - last;
        last = value;
        if (turns) {
            kept.keep(second, value);
        } else {
            kept.add(second, value);
        }
    }

    /** How many there are. */
    int size() {
        return kept.size();
    }

    /** When a step was, in s, by its place from 0 on. */
    double second(int i) {
        return kept.second(i);
    }

    /** What it went to, by its place from 0 on. */
    double value(int i) {
        return kept.value(i);
    }

    /** The last step until a time; −1 before the first. */
    int until(double second) {
        return kept.until(second);
    }

    /** The number at a time; NaN before the first. */
    double at(double second) {
        return kept.at(second);
    }
}
