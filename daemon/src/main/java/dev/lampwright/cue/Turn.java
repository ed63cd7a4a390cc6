package dev.lampwright.cue;

import dev.lampwright.look.Canvas;
import dev.lampwright.look.LookFault;
import dev.lampwright.look.Moment;
import java.util.function.Consumer;

/** One look's time on stage. The look's own time stops while pictures are taken, if it stays steady for them. */
final class Turn {
    private Cue cue;
    private double fadeSeconds;
    private long began;
    private long stood;
    private long last;

    /**
     * Creates a turn that has not begun.
     *
     * @param cue any
     */
    Turn(Cue cue) {
        this.cue = cue;
    }

    /** Begins, with a fade of the given duration. */
    void begin(Cue newCue, double newFadeSeconds, long nanos) {
        cue = newCue;
        fadeSeconds = newFadeSeconds;
        began = nanos;
        last = nanos;
        stood = 0;
    }

    /** Cuts in under another cue with the same look. */
    void cutIn(Cue newCue) {
        cue = newCue;
        fadeSeconds = 0;
    }

    /** The cue whose look is shown. */
    Cue cue() {
        return cue;
    }

    /** The progress of its fade, 0 to 1. */
    float faded(long nanos) {
        double seconds = (nanos - began) * 1e-9;
        return seconds >= fadeSeconds ? 1 : cue.eased(seconds / fadeSeconds);
    }

    /** Lets time pass. Returns whether the look must stay steady for a camera. */
    boolean pass(long nanos, boolean camera) {
        boolean steady = camera && cue.look().steadyForCamera();
        if (steady) {
            stood += nanos - last;
        }
        last = nanos;
        return steady;
    }

    /** Draws the look. */
    void draw(Moment moment, long nanos, boolean camera, Canvas canvas, Consumer<LookFault> faults) {
        boolean steady = pass(nanos, camera);
        moment.moveTo(nanos, began + stood);
        moment.keepSteady(steady);
        cue.look().draw(moment, canvas, faults);
    }
}
