package dev.lampwright.cue;

import java.util.Locale;

/** The curve of a fade. Source: W3C CSS Easing Functions Level 1, sections 2.1 and 2.2: the keywords and their cubic Bézier curves. */
public enum Easing {
    /** Evenly. */
    LINEAR(0, 0, 1, 1),
    /** Quickly at first, slowly at last. */
    EASE(0.25, 0.1, 0.25, 1),
    /** Slowly at first. */
    EASE_IN(0.42, 0, 1, 1),
    /** Slowly at last. */
    EASE_OUT(0, 0, 0.58, 1),
    /** Slowly at both ends. */
    EASE_IN_OUT(0.42, 0, 0.58, 1);

    private static final int HALVINGS = 30;

    private final double x1;
    private final double y1;
    private final double x2;
    private final double y2;

    Easing(double x1, double y1, double x2, double y2) {
        this.x1 = x1;
        this.y1 = y1;
        this.x2 = x2;
        this.y2 = y2;
    }

    /**
     * The keyword of the standard.
     *
     * @return for example {@code ease-in-out}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * How far a fade has got.
     *
     * @param time share of its time that has passed, 0 to 1
     * @return share of the new light, 0 to 1
     */
    double at(double time) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (bezier(middle, x1, x2) < time) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return bezier(high, y1, y2);
    }

    private static double bezier(double t, double first, double second) {
        double left = 1 - t;
        return 3 * left * left * t * first + 3 * left * t * t * second + t * t * t;
    }
}
