package dev.lampwright.look;

import dev.lampwright.colour.Gradient;

/**
 * Colours along the zone, the first at its beginning. They may drift: what leaves at one end re-enters at the other, or turns there.
 *
 * @param colours from 0 to 1; for a drift without a seam the first and the last must be the same
 * @param drift how they move
 * @param spread how much of the colours the zone shows at once, 0 or more: 1 all, 2 all of them twice, 0 one colour everywhere, which then
 *     goes from the first to the last as time passes. Colours that turn at the ends move by as much as the spread is below 1
 */
public record RampPaint(Gradient colours, Motion drift, double spread) implements PaintSpec, Paint {
    /**
     * The colours spread over the zone once.
     *
     * @param colours from 0 to 1
     * @param drift how they move
     */
    public RampPaint(Gradient colours, Motion drift) {
        this(colours, drift, 1);
    }

    @Override
    public Paint make() {
        return spread == 0 ? new EvenPaint(colours, new Passing(this)) : this;
    }

    @Override
    public long stillFor(Moment moment) {
        return drift.stillFor();
    }

    @Override
    public float[] paint(Moment moment, Cover cover, float[] room) {
        int pixels = cover.pixels();
        double offset =
                drift.backAndForth() ? -pixels * window(moment, pixels) : drift.travelled(moment.seconds(), pixels);
        boolean round = spread > 1 || (drift.speed() != 0 && !drift.backAndForth());
        double step = spread / pixels;
        double first = (0.5 * spread - offset) / pixels + cover.from() * step;
        colours.along(first, step, round, room, cover.from(), cover.to());
        return room;
    }

    /** One colour that changes from the first to the last. */
    private record Passing(RampPaint ramp) implements EvenPaint.Share {
        @Override
        public double at(Moment moment, int pixels) {
            double moved = ramp.drift.backAndForth()
                    ? ramp.window(moment, pixels)
                    : ramp.drift.travelled(moment.seconds(), pixels) / pixels;
            return moved == 1 ? 1 : moved - Math.floor(moved);
        }

        @Override
        public long stillFor(Moment moment) {
            return ramp.stillFor(moment);
        }
    }

    /** The position in the colours at which the zone begins while they go back and forth, 0 to 1 − spread. */
    private double window(Moment moment, int pixels) {
        double way = Math.max(0, 1 - spread) * pixels;
        double at = drift.turn(moment.seconds(), way);
        double there = (at > way ? 2 * way - at : at) / pixels;
        return drift.speed() < 0 ? way / pixels - there : there;
    }
}
