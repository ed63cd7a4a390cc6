package dev.lampwright.look;

import dev.lampwright.colour.Colour;
import dev.lampwright.colour.Gradient;
import dev.lampwright.colour.Stop;
import java.util.List;

/**
 * One colour everywhere.
 *
 * @param colour the colour
 */
public record SolidPaint(Colour colour) implements PaintSpec {
    @Override
    public Paint make() {
        return EvenPaint.at(Gradient.stepped(Stop.stretches(List.of(colour))), Level.fixed(0));
    }
}
