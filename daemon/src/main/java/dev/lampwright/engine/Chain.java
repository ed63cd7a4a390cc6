package dev.lampwright.engine;

import dev.lampwright.colour.Encoder;
import dev.lampwright.cue.Cue;
import dev.lampwright.cue.Stage;
import dev.lampwright.guard.CurrentGuard;
import dev.lampwright.look.BuiltInLooks;
import dev.lampwright.look.Canvas;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.signal.Signals;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;

/**
 * From status and time to bytes: the same statuses at the same times give the same bytes, on any machine. For one thread;
 * allocates nothing once warm.
 */
public final class Chain {
    private static final double FULL_DUTY = 65_535;
    private static final double FADE_S = 1.5;

    private final long silentAfterNanos;
    private final Signals signals;
    private final Stage stage;
    private final Encoder encoder;
    private final CurrentGuard guard;
    private PrinterState state = PrinterState.SILENT;

    /**
     * Puts the chain together.
     *
     * @param setup what is fitted, and the ceilings
     * @param looks the looks to show
     * @param framesPerSecond rate of the frames
     * @param silentAfter how long nothing may be heard before the state is silent
     * @param ambientC temperature of the room, in °C
     */
    public Chain(Setup setup, BuiltInLooks looks, int framesPerSecond, Duration silentAfter, double ambientC) {
        silentAfterNanos = silentAfter.toNanos();
        signals = new Signals(ambientC);
        int dimmers = setup.dimmers().size();
        stage = new Stage(
                cues(looks), signals, new Canvas(setup.pixels(), dimmers), new Canvas(setup.pixels(), dimmers));
        encoder = new Encoder(setup.order());
        guard = new CurrentGuard(setup, framesPerSecond);
    }

    /**
     * Makes a frame.
     *
     * @param status what is known of the printer
     * @param nanos the time, on the clock of the status, never earlier than the one before
     * @param frame where to write it
     */
    public void make(PrinterStatus status, long nanos, Frame frame) {
        signals.follow(status);
        state = status.stateAt(nanos, silentAfterNanos);
        Canvas canvas = stage.draw(state, nanos);
        encoder.encode(canvas.rgba(), frame.strip());
        float[] levels = canvas.dimmers();
        for (int i = 0; i < levels.length; i++) {
            frame.duties()[i] = (int) Math.round(Math.max(0, Math.min(1, levels[i])) * FULL_DUTY);
        }
        guard.hold(frame);
    }

    /**
     * The state that the last frame shows.
     *
     * @return silent before the first
     */
    public PrinterState state() {
        return state;
    }

    /**
     * The guard, to ask what the last frame takes.
     *
     * @return the same each time
     */
    public CurrentGuard guard() {
        return guard;
    }

    private static Map<PrinterState, Cue> cues(BuiltInLooks looks) {
        Map<PrinterState, Cue> cues = new EnumMap<>(PrinterState.class);
        for (PrinterState state : PrinterState.values()) {
            cues.put(state, new Cue(looks.of(state), state == PrinterState.FAULT ? 0 : FADE_S));
        }
        return cues;
    }
}
