package dev.lampwright.look;

import dev.lampwright.signal.Signals;
import java.util.List;

/**
 * One layer of a look: paint × extent × rhythm on a zone, drawn over what is below. {@link LayerSpec} describes one. Allocates nothing; for
 * one thread.
 */
public final class Layer {
    private final int length;
    private final List<Zone.Run> runs;
    private final Paint paint;
    private final Extent extent;
    private final Rhythm rhythm;
    private final Level opacity;
    private final Blend blend;
    private final Stroke stroke = new Stroke();

    /**
     * Creates a layer.
     *
     * @param zone the pixels it lies on
     * @param paint what colour
     * @param extent which pixels
     * @param rhythm when
     * @param opacity how strongly
     * @param blend how it is combined with what is below
     */
    public Layer(Zone zone, Paint paint, Extent extent, Rhythm rhythm, Level opacity, Blend blend) {
        length = zone.length();
        runs = zone.runs();
        this.paint = paint;
        this.extent = extent;
        this.rhythm = rhythm;
        this.opacity = opacity;
        this.blend = blend;
    }

    /**
     * How long this draws the same as at a moment, if nothing new is heard. A layer that is dark for a while may still change during that
     * time.
     *
     * @param moment the time and the signals
     * @return ns: 0 if it may move, {@link Signals#FOREVER} if it does not
     */
    long stillFor(Moment moment) {
        if (length == 0) {
            return Signals.FOREVER;
        }
        long rhythmStill = moment.steady() ? Signals.FOREVER : rhythm.stillFor(moment.seconds());
        if (!moment.steady() && rhythm.level(moment.seconds()) == 0) {
            return rhythmStill;
        }
        long opacityStill = opacity.stillFor(moment);
        if (opacity.at(moment) == 0) {
            return opacityStill;
        }
        long still = Math.min(rhythmStill, opacityStill);
        return still == 0 ? 0 : Math.min(still, Math.min(paint.stillFor(moment), extent.stillFor(moment)));
    }

    /**
     * Draws this over what is there. A zone without pixels shows nothing.
     *
     * @param moment the time and the signals
     * @param canvas where to draw
     * @throws ArithmeticException if opacity, rhythm, extent and paint give a number that is not a valid alpha; some of the layer is then
     *     drawn. Parts of the layer may also throw other exceptions
     */
    void draw(Moment moment, Canvas canvas) {
        if (length == 0) {
            return;
        }
        float lit = moment.steady() ? 1 : rhythm.level(moment.seconds());
        float strength = (float) opacity.at(moment) * lit;
        if (strength == 0) {
            return;
        }
        Cover cover = canvas.cover();
        cover.begin(length);
        extent.cover(moment, cover);
        if (cover.from() == cover.to()) {
            return;
        }
        stroke.take(paint.paint(moment, cover, canvas.paint()), paint.isEven(), cover, strength);
        boolean sound = true;
        for (int i = 0; i < runs.size(); i++) {
            sound &= stroke.lay(runs.get(i), blend, canvas.rgba());
        }
        if (!sound) {
            throw new ArithmeticException("its alpha is not a number from 0 to 1");
        }
    }
}
