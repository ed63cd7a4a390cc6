package dev.lampwright.engine;

import dev.lampwright.colour.Encoder;
import dev.lampwright.config.Config;
import dev.lampwright.cue.Cue;
import dev.lampwright.cue.Situation;
import dev.lampwright.cue.Stage;
import dev.lampwright.guard.CurrentGuard;
import dev.lampwright.look.Canvas;
import dev.lampwright.look.Fitting;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.signal.Signals;
import java.time.Duration;
import java.util.List;

/**
 * From status and time to bytes: the same statuses at the same times give the same bytes, on any machine. For one thread;
 * allocates nothing once warm.
 */
public final class Chain {
    private static final double FULL_DUTY = 65_535;

    private final long silentAfterNanos;
    private final Signals signals;
    private final Situation situation;
    private final Stage stage;
    private final List<Fitting.DimmerUse> dimmers;
    private final Encoder encoder;
    private final CurrentGuard guard;
    private Canvas canvas;
    private PrinterState state = PrinterState.SILENT;

    /**
     * Puts the chain together.
     *
     * @param setup what is fitted, and the ceilings
     * @param fitting what looks are made for
     * @param cues what to show when; the first that holds wins, and the last one always holds
     * @param encoder what turns light into the strip's bytes; for this chain alone
     * @param timing rate, silence and the room
     */
    public Chain(Setup setup, Fitting fitting, List<Cue> cues, Encoder encoder, Timing timing) {
        silentAfterNanos = timing.silentAfter().toNanos();
        signals = new Signals(timing.ambientC());
        situation = new Situation(signals);
        canvas = fitting.canvas();
        stage = new Stage(cues, signals, canvas, fitting.canvas());
        dimmers = fitting.dimmers();
        this.encoder = encoder;
        guard = new CurrentGuard(setup, timing.framesPerSecond());
    }

    /**
     * Puts the chain of a configuration together.
     *
     * @param config the configuration
     * @param cues its cues, or others to be shown on what is fitted
     * @return the chain
     */
    static Chain of(Config config, List<Cue> cues) {
        Timing timing = new Timing(config.framesPerSecond(), config.silentAfter(), config.ambientC());
        return new Chain(config.setup(), config.fitting(), cues, config.encoder(), timing);
    }

    /**
     * What a chain is told of time and place.
     *
     * @param framesPerSecond rate of the frames, 1 or more
     * @param silentAfter how long nothing may be heard before the state is silent
     * @param ambientC temperature of the room, in °C
     */
    public record Timing(int framesPerSecond, Duration silentAfter, double ambientC) {}

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
        situation.moveTo(status, state, nanos);
        canvas = stage.draw(situation);
        encoder.encode(canvas.rgba(), frame.strip());
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = (int) Math.round(Math.max(0, Math.min(1, level(i))) * FULL_DUTY);
        }
        guard.hold(frame);
    }

    private float level(int dimmer) {
        Fitting.DimmerUse use = dimmers.get(dimmer);
        return use.isWhite() ? canvas.dimmers()[dimmer] : canvas.rgba()[4 * use.colourPixel() + use.channel()];
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
     * The name of the look that is on, or fading in.
     *
     * @return as the configuration has it
     */
    public String look() {
        return stage.look().name();
    }

    /**
     * The light of the last frame, before it became bytes.
     *
     * @return dark before the first
     */
    Canvas light() {
        return canvas;
    }

    /**
     * The guard, to ask what the last frame takes.
     *
     * @return the same each time
     */
    public CurrentGuard guard() {
        return guard;
    }
}
