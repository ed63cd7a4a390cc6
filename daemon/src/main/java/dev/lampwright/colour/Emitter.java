package dev.lampwright.colour;

/**
 * One kind of LED of a strip, as measured at full duty.
 *
 * @param colour its chromaticity
 * @param luminance its light, above 0, in any unit that is the same for all kinds of the strip: cd/m², lx at a fixed place, lm
 */
public record Emitter(Chromaticity colour, double luminance) {
    /**
     * Creates an emitter.
     *
     * @throws IllegalArgumentException if it gives no light
     */
    public Emitter {
        if (!(luminance > 0 && luminance < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("an LED's luminance is above 0, not " + luminance);
        }
    }

    Triple xyz() {
        return colour.xyz(luminance);
    }
}
