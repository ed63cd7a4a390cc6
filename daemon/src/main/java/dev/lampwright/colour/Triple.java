package dev.lampwright.colour;

import java.util.function.DoubleUnaryOperator;

/**
 * Three coordinates of a colour, in any space.
 *
 * @param first such as red, X, L or hue
 * @param second such as green, Y, a or saturation
 * @param third such as blue, Z, b or lightness
 */
record Triple(double first, double second, double third) {
    /**
     * Applies a function to each.
     *
     * @param function what to do
     * @return the three results
     */
    Triple each(DoubleUnaryOperator function) {
        return new Triple(function.applyAsDouble(first), function.applyAsDouble(second), function.applyAsDouble(third));
    }

    /**
     * The least.
     *
     * @return the smallest of the three
     */
    double least() {
        return Math.min(first, Math.min(second, third));
    }

    /**
     * The most.
     *
     * @return the greatest of the three
     */
    double most() {
        return Math.max(first, Math.max(second, third));
    }
}
