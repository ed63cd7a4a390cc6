package dev.lampwright.look;

import dev.lampwright.colour.Colour;
import dev.lampwright.colour.Gradient;
import dev.lampwright.colour.Stop;
import java.util.List;

/**
 * Gives each grain one of several colours, at random.
 *
 * @param colours the colours, all equally likely; a colour listed twice is twice as likely
 * @param glintSeconds that of the grains, in s
 * @param seed that of the grains
 */
public record PalettePaint(List<Colour> colours, double glintSeconds, long seed) implements PaintSpec {
    /** Keeps a copy of the list. */
    public PalettePaint {
        colours = List.copyOf(colours);
    }

    @Override
    public Paint make() {
        Gradient table = Gradient.stepped(Stop.stretches(colours));
        Turns turns = new Turns(glintSeconds, seed);
        return (moment, cover, room) -> {
            turns.moveTo(moment.seconds(), cover.pixels());
            for (int i = cover.from(); i < cover.to(); i++) {
                table.colourAndAlpha(turns.otherChance(i, (long) turns.own(i)), room, 4 * i);
            }
            return room;
        };
    }
}
