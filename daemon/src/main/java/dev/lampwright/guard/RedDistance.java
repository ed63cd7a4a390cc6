package dev.lampwright.guard;

/**
 * How far a colour is from saturated red in the CIE 1976 UCS diagram. Source: WCAG 2.2, working definition of a pair of opposing
 * transitions involving a saturated red (ISO 9241-391): one state has R ÷ (R + G + B) of 0.8 or more, and the two are more than 0.2 apart.
 * The corners of saturated red are known, and the farthest of them is used.
 */
final class RedDistance {
    /** More than 0.2 from some saturated red. */
    static final int FAR = 0;
    /** Too close to red, or too dark to tell. */
    static final int UNCERTAIN = 1;
    /** Saturated red. */
    static final int RED = 2;
    /** The change that is a transition: from far to red or back. */
    static final int STEP = RED - FAR;

    private static final double APART = 0.2;
    private static final double[][] CORNERS = {
        chromaticity(1, 0, 0), chromaticity(0.8, 0.2, 0), chromaticity(0.8, 0, 0.2)
    };

    private RedDistance() {}

    /**
     * Judges a colour that is lit and not saturated red. Allocates nothing.
     *
     * @param red linear red, of any scale
     * @param green linear green of the same scale
     * @param blue linear blue of the same scale
     * @return {@link #FAR} or {@link #UNCERTAIN}
     */
    static int of(double red, double green, double blue) {
        double sum = sum(red, green, blue);
        double u = 4 * x(red, green, blue);
        double v = 9 * y(red, green, blue);
        double apart = APART * sum;
        for (double[] corner : CORNERS) {
            double du = u - corner[0] * sum;
            double dv = v - corner[1] * sum;
            if (du * du + dv * dv > apart * apart) {
                return FAR;
            }
        }
        return UNCERTAIN;
    }

    /** u′ = 4X ÷ (X + 15Y + 3Z), v′ = 9Y ÷ (X + 15Y + 3Z): CIE 15. */
    private static double[] chromaticity(double red, double green, double blue) {
        double sum = sum(red, green, blue);
        return new double[] {4 * x(red, green, blue) / sum, 9 * y(red, green, blue) / sum};
    }

    private static double sum(double red, double green, double blue) {
        return x(red, green, blue) + 15 * y(red, green, blue) + 3 * z(red, green, blue);
    }

    /** Tristimulus values of the primaries of sRGB: IEC 61966-2-1. */
    private static double x(double red, double green, double blue) {
        return 0.4124 * red + 0.3576 * green + 0.1805 * blue;
    }

    private static double y(double red, double green, double blue) {
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    }

    private static double z(double red, double green, double blue) {
        return 0.0193 * red + 0.1192 * green + 0.9505 * blue;
    }
}
