package dev.lampwright.look;

import dev.lampwright.colour.Gradient;
import dev.lampwright.signal.Follow;
import java.util.Optional;

/**
 * One colour everywhere, chosen by a signal; the colour of the lower end while the signal is unknown.
 *
 * @param colours from 0 to 1
 * @param by the signal and its bounds
 */
public record ScalePaint(Gradient colours, Follow by) implements PaintSpec {
    @Override
    public Optional<Follow> follows() {
        return Optional.of(by);
    }

    @Override
    public Paint make() {
        return EvenPaint.at(colours, Level.by(by));
    }
}
