package dev.lampwright.tool.survey;

/** When a number changed, thinned out as in a {@link Series}; every step that reverses direction is kept. */
final class Steps {
    private static final int MOST = 512;

    private final Series kept = new Series(MOST);
    private double last = Double.NaN;
    private double direction;

    /**
     * Adds a number.
     *
     * @param second when it came, in s since any moment; never earlier than the previous one
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

    /** The last step up to a given time; −1 before the first. */
    int until(double second) {
        return kept.until(second);
    }

    /** The number at a time; NaN before the first. */
    double at(double second) {
        return kept.at(second);
    }
}
