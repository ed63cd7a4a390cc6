package dev.lampwright.demo;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import dev.lampwright.protocol.WhenSilent;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * What the controller in memory shows: the host's frames and, without a host, what the set-up specifies ({@code firmware-notes/wire.md},
 * section 5). The ceiling is applied here to everything that is shown (section 4).
 */
final class MemoryLight {
    private static final int BEACON_EVERY = 8;
    private static final int BEACON_RED = 16;
    private static final int BEACON_GREEN = 6;
    private static final long BEACON_ON = TimeUnit.SECONDS.toNanos(1);
    private static final long BEACON_OFF = TimeUnit.SECONDS.toNanos(3);

    private enum Master {
        NOBODY,
        HOST,
        REST,
        BEACON
    }

    private final MemoryController.Display display;
    private Optional<Setup> setup = Optional.empty();
    private SupplyDraw draw;
    private Frame frame = new Frame(0, 0);
    private Master master = Master.NOBODY;
    private boolean shownSinceSetup;
    private boolean beaconOn;
    private long due;

    MemoryLight(MemoryController.Display display) {
        this.display = display;
    }

    /** As after a power cut. */
    void start(long nanos) {
        setup = Optional.empty();
        master = Master.NOBODY;
        shownSinceSetup = false;
        frame.darken();
        display.show(MemoryController.Light.DARK, 0, frame, nanos);
    }

    /** The active set-up. */
    Optional<Setup> setup() {
        return setup;
    }

    /** What is shown, or was last shown; written only here and where a whole frame is received. */
    Frame frame() {
        return frame;
    }

    /** Activates a set-up, and returns whether it differs from the previous one. Nothing is driven. */
    boolean setUp(Setup next, long nanos) {
        boolean differs = !setup.equals(Optional.of(next));
        if (differs) {
            setup = Optional.of(next);
            draw = new SupplyDraw(next);
            frame = new Frame(next.stripBytes(), next.dimmers().size());
            shownSinceSetup = false;
        }
        heard(next, nanos);
        return differs;
    }

    /** If the dark strip exceeds the ceiling: its current in mA, rounded up; otherwise 0. */
    int darkOverMilliamps(Setup inForce) {
        int supply = inForce.stripSupply();
        long idle = draw.idle(supply);
        long grains = SupplyDraw.GRAINS_PER_MILLIAMP;
        return idle <= draw.limit(supply) ? 0 : (int) Math.min(0xFFFF, (idle + grains - 1) / grains);
    }

    /** Call this when the host was heard: restarts the holdover. */
    void heard(Setup inForce, long nanos) {
        master = Master.HOST;
        due = nanos + TimeUnit.MILLISECONDS.toNanos(inForce.holdoverMillis());
    }

    /** Shows a frame of the host, and returns whether it had to be dimmed. */
    boolean show(Frame next, int sequence, long nanos) {
        frame.copyFrom(next);
        boolean dimmed = clamp();
        shownSinceSetup = true;
        display.show(dimmed ? MemoryController.Light.DIMMED : MemoryController.Light.WHOLE, sequence, frame, nanos);
        return dimmed;
    }

    /** Shows what is configured for a time without a host, and returns whether that is a change. */
    boolean rest(Setup inForce, WhenSilent what, long nanos) {
        master = what == WhenSilent.BEACON ? Master.BEACON : Master.REST;
        due = nanos + BEACON_ON;
        boolean changes = what != WhenSilent.KEEP || !shownSinceSetup;
        if (changes) {
            showOwn(inForce, what == WhenSilent.BEACON, nanos);
        }
        return changes;
    }

    /** Lets time pass; returns whether the light has changed by itself. */
    boolean pass(long nanos) {
        boolean changed = false;
        while ((master == Master.HOST || master == Master.BEACON) && due - nanos <= 0) {
            changed |= change(setup.orElseThrow());
        }
        return changed;
    }

    private boolean change(Setup inForce) {
        if (master == Master.HOST) {
            return rest(inForce, inForce.whenSilent(), due);
        }
        long turn = due;
        due += beaconOn ? BEACON_OFF : BEACON_ON;
        showOwn(inForce, !beaconOn, turn);
        return true;
    }

    private void showOwn(Setup inForce, boolean beacon, long nanos) {
        beaconOn = beacon;
        frame.darken();
        if (beacon) {
            lightBeacon(inForce);
        }
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = inForce.dimmers().get(i).silentDuty();
        }
        clamp();
        shownSinceSetup = true;
        display.show(beacon ? MemoryController.Light.BEACON : MemoryController.Light.DARK, 0, frame, nanos);
    }

    private void lightBeacon(Setup inForce) {
        int red = inForce.order().indexOf('R');
        int green = inForce.order().indexOf('G');
        int step = BEACON_EVERY * inForce.channels();
        for (int at = 0; at < frame.strip().length; at += step) {
            frame.strip()[at + red] = BEACON_RED;
            frame.strip()[at + green] = BEACON_GREEN;
        }
    }

    private boolean clamp() {
        boolean dimmed = false;
        for (int supply = 0; supply < draw.supplies(); supply++) {
            long factor = draw.factor(supply, draw.load(supply, frame));
            if (factor < SupplyDraw.WHOLE) {
                draw.dim(supply, factor, frame);
                dimmed = true;
            }
            requireWithin(supply);
        }
        return dimmed;
    }

    private void requireWithin(int supply) {
        long room = Math.max(0, draw.limit(supply) - draw.idle(supply));
        if (draw.load(supply, frame) > room) {
            throw new IllegalStateException(
                    "a frame is over the ceiling of supply " + supply + " although it was clamped");
        }
    }
}
