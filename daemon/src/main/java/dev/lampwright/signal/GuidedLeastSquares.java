package dev.lampwright.signal;

/**
 * Least squares of y = c + a·t + b·s over any number of points, where b is drawn towards what is known of it beforehand. Only sums
 * are kept; allocates nothing.
 */
final class GuidedLeastSquares {
    private double count;
    private double sumT;
    private double sumS;
    private double sumY;
    private double sumTt;
    private double sumTs;
    private double sumSs;
    private double sumTy;
    private double sumSy;
    private double sumYy;

    private double inverseCc;
    private double inverseCa;
    private double inverseCb;
    private double inverseAa;
    private double inverseAb;
    private double inverseBb;
    private double c;
    private double a;
    private double b;
    private double scatter;

    /** Forgets all points. */
    void clear() {
        count = 0;
        sumT = 0;
        sumS = 0;
        sumY = 0;
        sumTt = 0;
        sumTs = 0;
        sumSs = 0;
        sumTy = 0;
        sumSy = 0;
        sumYy = 0;
    }

    /**
     * Adds a point.
     *
     * @param t one thing that y depends on
     * @param s another
     * @param y the value there
     */
    void add(double t, double s, double y) {
        count++;
        sumT += t;
        sumS += s;
        sumY += y;
        sumTt += t * t;
        sumTs += t * s;
        sumSs += s * s;
        sumTy += t * y;
        sumSy += s * y;
        sumYy += y * y;
    }

    /**
     * Finds c, a and b.
     *
     * @param leastScatter the points are taken to scatter by this at least, in the unit of y
     * @param knownB what is known of b beforehand
     * @param knownWithin standard error of that, above 0; infinite if nothing is known
     * @return false if the points do not say
     */
    boolean solve(double leastScatter, double knownB, double knownWithin) {
        return solveOnce(leastScatter, knownB, knownWithin) && solveOnce(scatter, knownB, knownWithin);
    }

    /** The scatter of the points sets how much what is known beforehand weighs against them; it comes out of a first solution. */
    private boolean solveOnce(double assumedScatter, double knownB, double knownWithin) {
        double stiffness = Math.pow(assumedScatter / knownWithin, 2);
        if (!invert(sumSs + stiffness)) {
            return false;
        }
        double right = sumSy + stiffness * knownB;
        c = inverseCc * sumY + inverseCa * sumTy + inverseCb * right;
        a = inverseCa * sumY + inverseAa * sumTy + inverseAb * right;
        b = inverseCb * sumY + inverseAb * sumTy + inverseBb * right;
        double squares = sumYy - c * sumY - a * sumTy - b * sumSy + stiffness * b * (knownB - b);
        scatter = Math.max(assumedScatter, Math.sqrt(Math.max(0, squares) / Math.max(1, count - 3)));
        return true;
    }

    /** The inverse of the normal matrix, by cofactors. */
    private boolean invert(double sumSsAndStiffness) {
        double cc = sumTt * sumSsAndStiffness - sumTs * sumTs;
        double ca = sumTs * sumS - sumT * sumSsAndStiffness;
        double cb = sumT * sumTs - sumTt * sumS;
        double determinant = count * cc + sumT * ca + sumS * cb;
        inverseCc = cc / determinant;
        inverseCa = ca / determinant;
        inverseCb = cb / determinant;
        inverseAa = (count * sumSsAndStiffness - sumS * sumS) / determinant;
        inverseAb = (sumT * sumS - count * sumTs) / determinant;
        inverseBb = (count * sumTt - sumT * sumT) / determinant;
        return determinant > 0;
    }

    double c() {
        return c;
    }

    double a() {
        return a;
    }

    double b() {
        return b;
    }

    /**
     * How far the points are from what was found.
     *
     * @return standard deviation in the unit of y
     */
    double scatter() {
        return scatter;
    }

    /**
     * The standard error of a quantity that is made up of c, a and b.
     *
     * @param byC its derivative by c
     * @param byA its derivative by a
     * @param byB its derivative by b
     * @return in the unit of the quantity
     */
    double error(double byC, double byA, double byB) {
        double alone = inverseCc * byC * byC + inverseAa * byA * byA + inverseBb * byB * byB;
        double together = inverseCa * byC * byA + inverseCb * byC * byB + inverseAb * byA * byB;
        return scatter * Math.sqrt(Math.max(0, alone + 2 * together));
    }
}
