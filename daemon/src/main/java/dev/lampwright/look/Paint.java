package dev.lampwright.look;

import dev.lampwright.colour.Colour;
import dev.lampwright.colour.Gradient;
import dev.lampwright.colour.Stop;
import dev.lampwright.signal.Follow;
import java.util.List;

/** What colour the pixels of a zone have. */
public interface Paint {
    /**
     * Writes the colour of each pixel.
     *
     * @param moment the time and the signals
     * @param rgba linear light, not premultiplied, and alpha: four floats for each place of the zone, place 0 where it begins; every
     *     one is written
     * @param pixels length of the zone
     */
    void paint(Moment moment, float[] rgba, int pixels);

    /**
     * One colour everywhere.
     *
     * @param colour the colour
     * @return the paint
     */
    static Paint solid(Colour colour) {
        return new EvenPaint(Gradient.stepped(Stop.stretches(List.of(colour))), Level.fixed(0));
    }

    /**
     * One colour everywhere, chosen by a signal; that of the lower end while the signal is unknown.
     *
     * @param colours from 0 to 1
     * @param by the signal and its bounds
     * @return the paint
     */
    static Paint scale(Gradient colours, Follow by) {
        return new EvenPaint(colours, Level.by(by));
    }

    /**
     * Colours along the zone, the first where it begins. They may drift: what leaves at one end comes in at the other.
     *
     * @param colours from 0 to 1; for a drift without a seam the first and the last are alike
     * @param drift how they move
     * @return the paint
     */
    static Paint ramp(Gradient colours, Motion drift) {
        return (moment, rgba, pixels) -> {
            double offset = drift.travelled(moment.seconds(), pixels);
            for (int i = 0; i < pixels; i++) {
                double place = (i + 0.5 - offset) / pixels;
                double share = drift.speed() == 0 ? place : place - Math.floor(place);
                colours.colourAndAlpha(share, rgba, 4 * i);
            }
        };
    }

    /**
     * A black-body glow over a cooling bar with random sparks.
     *
     * @param settings how it burns
     * @return the paint, which keeps the bar: it is for one layer only
     */
    static Paint ember(EmberSettings settings) {
        return new EmberPaint(settings);
    }
}
