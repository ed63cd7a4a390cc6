package dev.lampwright.look;

import dev.lampwright.colour.Gradient;
import dev.lampwright.colour.Light;
import dev.lampwright.signal.Signal;
import java.util.List;

/** The paints. */
final class Paints {
    private Paints() {}

    /**
     * One colour everywhere.
     *
     * @param colour the colour
     * @return the paint
     */
    static Paint solid(Light colour) {
        return new Even(new Gradient(List.of(colour)), moment -> 0);
    }

    /**
     * One colour everywhere, chosen by a signal; that of the lower end while the signal is unknown.
     *
     * @param colours from 0 to 1
     * @param by the signal
     * @return the paint
     */
    static Paint scale(List<Light> colours, Signal by) {
        return new Even(new Gradient(colours), moment -> {
            double value = moment.value(by);
            return Double.isNaN(value) ? 0 : value;
        });
    }

    /**
     * Colours along the zone, the first where it begins.
     *
     * @param colours one or more
     * @return the paint
     */
    static Paint ramp(List<Light> colours) {
        Gradient gradient = new Gradient(colours);
        return (moment, rgb, pixels) -> {
            for (int i = 0; i < pixels; i++) {
                gradient.colour((i + 0.5) / pixels, rgb, 3 * i);
            }
        };
    }

    /** Where in a gradient to look, at some moment. */
    private interface Place {
        double at(Moment moment);
    }

    private record Even(Gradient gradient, Place place) implements Paint {
        @Override
        public void paint(Moment moment, float[] rgb, int pixels) {
            gradient.colour(place.at(moment), rgb, 0);
            for (int i = 1; i < pixels; i++) {
                System.arraycopy(rgb, 0, rgb, 3 * i, 3);
            }
        }
    }
}
