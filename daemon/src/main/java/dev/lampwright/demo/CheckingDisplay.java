package dev.lampwright.demo;

import dev.lampwright.engine.Daemon;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;

/** The demo's strip: keeps what is shown now, and checks every frame against the ceiling again. */
final class CheckingDisplay implements MemoryController.Display {
    private final SupplyDraw draw;
    private final Frame shown;
    private final Set<PrinterState> states = EnumSet.noneOf(PrinterState.class);
    private final AtomicLong overCeiling = new AtomicLong();
    private final AtomicLong dimmed = new AtomicLong();
    private volatile Daemon watched;

    /**
     * Creates a dark strip.
     *
     * @param setup what is fitted
     */
    CheckingDisplay(Setup setup) {
        draw = new SupplyDraw(setup);
        shown = new Frame(setup.stripBytes(), setup.dimmers().size());
    }

    /**
     * From now on, records which state each frame shows.
     *
     * @param daemon sends the frames
     */
    void watch(Daemon daemon) {
        watched = daemon;
    }

    /** A controller that has not been set up shows empty frames: dark. */
    @Override
    public synchronized void show(MemoryController.Light light, int sequence, Frame frame, long nanos) {
        if (frame.strip().length != shown.strip().length) {
            shown.darken();
            return;
        }
        shown.copyFrom(frame);
        for (int supply = 0; supply < draw.supplies(); supply++) {
            if (draw.idle(supply) + draw.load(supply, frame) > draw.limit(supply)) {
                overCeiling.incrementAndGet();
            }
        }
        if (light == MemoryController.Light.DIMMED) {
            dimmed.incrementAndGet();
        }
        if (watched != null && (light == MemoryController.Light.WHOLE || light == MemoryController.Light.DIMMED)) {
            states.add(watched.frames().snapshot().state());
        }
    }

    /**
     * What is shown now.
     *
     * @return a copy
     */
    synchronized Frame shown() {
        Frame copy = new Frame(shown.strip().length, shown.duties().length);
        copy.copyFrom(shown);
        return copy;
    }

    /**
     * Which states have been shown.
     *
     * @return a copy, in the order of the states
     */
    synchronized Set<PrinterState> states() {
        return EnumSet.copyOf(states);
    }

    /**
     * How many frames were over the ceiling of a supply.
     *
     * @return since the start; anything other than 0 is a bug in Lampwright
     */
    long overCeiling() {
        return overCeiling.get();
    }

    /**
     * How many frames the controller had to dim.
     *
     * @return since the start; anything other than 0 is a bug in Lampwright
     */
    long dimmed() {
        return dimmed.get();
    }
}
