package dev.lampwright.printer;

import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;

/**
 * Where the printer says one quantity, and how. What is told becomes a number, times {@code scale}, plus {@code offset}, and is then
 * turned from {@code unit} into the quantity's own unit.
 *
 * @param source where it is told
 * @param unit the unit in which it is told
 * @param scale the number is multiplied by this
 * @param offset and then this is added
 */
public record Binding(Source source, Unit unit, double scale, double offset) {
    /**
     * A number in the quantity's own unit.
     *
     * @param source where it is told
     */
    public Binding(Source source) {
        this(source, Unit.OWN, 1, 0);
    }
}
