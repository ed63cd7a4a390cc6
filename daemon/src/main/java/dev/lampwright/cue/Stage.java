package dev.lampwright.cue;

import dev.lampwright.look.Canvas;
import dev.lampwright.look.Moment;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signals;
import java.util.EnumMap;
import java.util.Map;

/**
 * Puts the look of each state on and fades from one to the next in linear light. What fades out is the light as it was seen when
 * the state changed, so a fade that is interrupted goes on from there without a step. Allocates nothing once made.
 */
public final class Stage {
    private final Map<PrinterState, Cue> cues;
    private final Moment moment;
    private final Canvas seen;
    private final Canvas before;
    private PrinterState state = PrinterState.SILENT;
    private long sinceNanos;
    private boolean lit;

    /**
     * Makes a stage with nothing on.
     *
     * @param cues what to put on, for every state
     * @param signals what light can follow
     * @param seen the canvas that frames are drawn on
     * @param before another of the same size
     */
    public Stage(Map<PrinterState, Cue> cues, Signals signals, Canvas seen, Canvas before) {
        this.cues = new EnumMap<>(cues);
        this.moment = new Moment(signals);
        this.seen = seen;
        this.before = before;
    }

    /**
     * Draws a frame.
     *
     * @param now what the printer is doing
     * @param nanos the time, never earlier than the one before
     * @return the canvas with the frame
     */
    public Canvas draw(PrinterState now, long nanos) {
        if (!lit || now != state) {
            before.copyFrom(seen);
            state = now;
            sinceNanos = nanos;
            lit = true;
        }
        Cue cue = cues.get(now);
        moment.moveTo(nanos, sinceNanos);
        cue.look().draw(moment, seen);
        double faded = moment.seconds() / cue.fadeSeconds();
        if (faded < 1) {
            seen.mix(before, (float) (1 - faded));
        }
        return seen;
    }
}
