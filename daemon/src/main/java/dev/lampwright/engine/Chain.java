package dev.lampwright.engine;

import dev.lampwright.colour.Encoder;
import dev.lampwright.config.Config;
import dev.lampwright.cue.Adjustment;
import dev.lampwright.cue.AlarmSequence;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.AlarmWatch;
import dev.lampwright.cue.Cue;
import dev.lampwright.cue.Situation;
import dev.lampwright.cue.Stage;
import dev.lampwright.cue.Wishes;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.guard.Guards;
import dev.lampwright.look.Canvas;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Look;
import dev.lampwright.look.LookFault;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.signal.Room;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * From status, wishes and time to bytes: the same ones at the same times give the same bytes, on any machine. For one thread;
 * allocates nothing once warm.
 */
public final class Chain {
    private static final double FULL_DUTY = 65_535;

    private final Timing timing;
    private final long silentAfterNanos;
    private final Signals signals;
    private final Situation situation;
    private final Stage stage;
    private final Adjustment adjustment;
    private final AlarmWatch alarm;
    private final List<Fitting.DimmerUse> dimmers;
    private final Encoder encoder;
    private final Guards guards;
    private final List<LookFault> faults = new ArrayList<>();
    private Optional<Ending> ending = Optional.empty();
    private Canvas canvas;
    private PrinterState state = PrinterState.SILENT;

    /**
     * Puts the chain together, with the usual guards.
     *
     * @param setup what is fitted, and the ceilings
     * @param fitting what looks are made for
     * @param cues what to show when; the first that holds wins, and the last one always holds
     * @param encoder what turns light into the strip's bytes; for this chain alone
     * @param timing rate, silence and the room
     */
    public Chain(Setup setup, Fitting fitting, List<Cue> cues, Encoder encoder, Timing timing) {
        this(
                fitting,
                new Show(cues, Map.of(), AlarmSequence.A_4),
                encoder,
                new Guards(setup, fitting, GuardSettings.USUAL, timing.framesPerSecond()),
                timing,
                new Signals(timing.room()));
    }

    /** What can be shown: by cues, when asked for, and of a fault. */
    private record Show(List<Cue> cues, Map<String, Look> looks, AlarmSequence sequence) {
        static Show of(Config config, List<Cue> cues) {
            return new Show(cues, config.looks(), config.alarmSequence());
        }
    }

    private Chain(Fitting fitting, Show show, Encoder encoder, Guards guards, Timing timing, Signals signals) {
        this.timing = timing;
        this.signals = signals;
        silentAfterNanos = timing.silentAfter().toNanos();
        situation = new Situation(signals);
        canvas = fitting.canvas();
        stage = new Stage(show.cues(), show.looks(), signals, fitting.canvas(), fitting.canvas(), faults::add);
        adjustment = new Adjustment(canvas);
        alarm = new AlarmWatch(show.sequence());
        dimmers = fitting.dimmers();
        this.encoder = encoder;
        this.guards = guards;
    }

    /**
     * Puts the chain of a configuration together.
     *
     * @param config the configuration
     * @param cues its cues, or others to be shown on what is fitted
     * @return the chain
     */
    public static Chain of(Config config, List<Cue> cues) {
        return of(config, cues, config.guard());
    }

    /**
     * Puts the chain of a configuration together, with other guards.
     *
     * @param config the configuration
     * @param cues its cues, or others to be shown on what is fitted
     * @param settings what is chosen about the guards
     * @return the chain
     */
    public static Chain of(Config config, List<Cue> cues, GuardSettings settings) {
        Timing timing = new Timing(config.framesPerSecond(), config.silentAfter(), config.room());
        Guards guards = new Guards(config.setup(), config.fitting(), settings, timing.framesPerSecond());
        Signals signals = new Signals(timing.room());
        return new Chain(config.fitting(), Show.of(config, cues), config.encoder(), guards, timing, signals);
    }

    /**
     * Puts together the chain that another configuration asks for, to follow one that runs. Signals go on where they are.
     *
     * @param before the chain that runs
     * @param next the configuration; the rate of the frames is that of {@code before}, whatever it says
     * @return the chain; it is to {@link #takeOver} before its first frame
     */
    static Chain after(Chain before, Config next) {
        int framesPerSecond = before.framesPerSecond();
        Timing timing = new Timing(framesPerSecond, next.silentAfter(), next.room());
        Signals signals = timing.room().equals(before.timing.room()) ? before.signals : new Signals(timing.room());
        Guards guards = new Guards(next.setup(), next.fitting(), next.guard(), framesPerSecond);
        return new Chain(next.fitting(), Show.of(next, next.cues()), next.encoder(), guards, timing, signals);
    }

    /**
     * The rate of the frames, by which the guards reckon.
     *
     * @return frames a second
     */
    int framesPerSecond() {
        return timing.framesPerSecond();
    }

    /**
     * Begins with the light that another chain shows, so that the first look fades in over it. Where the strip is another one, it
     * begins dark. The guards, the alarm and what people asked for go on where they are.
     *
     * @param before the chain that ran up to now
     */
    void takeOver(Chain before) {
        stage.beginWith(before.stage);
        adjustment.takeOver(before.adjustment);
        alarm.takeOver(before.alarm);
        guards.takeOver(before.guards);
    }

    /**
     * What a chain is told of time and place.
     *
     * @param framesPerSecond rate of the frames, 1 or more
     * @param silentAfter how long nothing may be heard before the state is silent
     * @param room where the printer stands, and what counts as hot there
     */
    public record Timing(int framesPerSecond, Duration silentAfter, Room room) {}

    /**
     * Makes a frame for which nobody has asked for anything.
     *
     * @param status what is known of the printer
     * @param nanos the time, on the clock of the status, never earlier than the one before
     * @param frame where to write it
     */
    public void make(PrinterStatus status, long nanos, Frame frame) {
        make(status, Wishes.NONE, nanos, frame);
    }

    /**
     * Makes a frame.
     *
     * @param status what is known of the printer
     * @param wishes what people have asked for
     * @param nanos the time, on the clock of the status, never earlier than the one before
     * @param frame where to write it
     */
    public void make(PrinterStatus status, Wishes wishes, long nanos, Frame frame) {
        signals.follow(status);
        state = status.stateAt(nanos, silentAfterNanos);
        situation.moveTo(status, state, nanos);
        situation.take(wishes, alarm.step(state, wishes));
        canvas = adjustment.adjust(stage.draw(situation), situation);
        if (ending.isPresent()) {
            ending.get().dim(canvas, nanos);
        }
        encoder.encode(canvas.rgba(), frame.strip());
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = (int) Math.round(Math.max(0, Math.min(1, level(i))) * FULL_DUTY);
        }
        guards.hold(frame, nanos);
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
     * Where the alarm stands.
     *
     * @return normal before the first frame
     */
    public AlarmState alarm() {
        return alarm.state();
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
     * The value of a signal.
     *
     * @param signal which
     * @param nanos the time of the last frame
     * @return the value, NaN if it is unknown
     */
    double signal(Signal signal, long nanos) {
        return signals.value(signal, nanos);
    }

    /**
     * Fades all light out from now on.
     *
     * @param how from when, and how fast
     */
    void end(Ending how) {
        ending = Optional.of(how);
    }

    /**
     * What could not be drawn so far and stays dark.
     *
     * @return each part of a look once, oldest first; grows as more fail
     */
    public List<LookFault> faults() {
        return Collections.unmodifiableList(faults);
    }

    /**
     * The light of the last frame, before it became bytes.
     *
     * @return dark before the first
     */
    public Canvas light() {
        return canvas;
    }

    /**
     * The guards, to ask what the last frame takes.
     *
     * @return the same each time
     */
    public Guards guard() {
        return guards;
    }
}
