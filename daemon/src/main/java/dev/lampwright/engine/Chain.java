package dev.lampwright.engine;

import dev.lampwright.colour.Encoder;
import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.cue.Adjustment;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.AlarmWatch;
import dev.lampwright.cue.Cue;
import dev.lampwright.cue.Situation;
import dev.lampwright.cue.Stage;
import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.guard.Guards;
import dev.lampwright.look.Canvas;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Look;
import dev.lampwright.look.LookFault;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.signal.Signal;
import dev.lampwright.signal.Signals;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * From status, wishes and time to bytes: the same ones at the same times give the same bytes, on any machine. For one thread;
 * allocates nothing once warm.
 */
public final class Chain {
    /**
     * How long a frame usually takes at most until it is shown. Our own choice: about what 300 pixels take at 115 200 baud; what takes longer
     * is measured.
     */
    static final long USUALLY_LATE_NANOS = 100_000_000;

    private static final double FULL_DUTY = 65_535;

    /** Our own choice: a controller that has forgotten its light shows it again before anybody wonders. */
    private static final long KEEP_ALIVE_NANOS = 250_000_000;

    /** So that three in a row may get lost. */
    private static final int KEEP_ALIVES_A_HOLDOVER = 4;

    private static final long NANOS_PER_MILLI = 1_000_000;

    private final int framesPerSecond;
    private final LightSpec light;
    private final long silentAfterNanos;
    private final long keepAliveNanos;
    private final Signals signals;
    private final Situation situation;
    private final Stage stage;
    private final Adjustment adjustment;
    private final AlarmWatch alarm;
    private final List<Fitting.DimmerUse> dimmers;
    private final Encoder encoder;
    private final Guards guards;
    private final List<LookFault> faults = new ArrayList<>();
    private final List<LookFault> faultsToRead = Collections.unmodifiableList(faults);
    private Optional<Ending> ending = Optional.empty();
    private Canvas canvas;
    private PrinterState state = PrinterState.SILENT;
    private PrinterStatus drawnStatus = PrinterStatus.nothingHeard();
    private Wishes drawnWishes = Wishes.NONE;
    /** Light that was drawn stays as it is until then, unless something new is heard or asked for. */
    private long stillUntil;

    private boolean rests;
    private boolean made;
    /** The last frame before the guards, and after them. */
    private final Frame wanted;

    private final Frame sent;

    private Chain(Setup setup, LightSpec light, int framesPerSecond, Signals signals) {
        this.framesPerSecond = framesPerSecond;
        this.light = light;
        this.signals = signals;
        silentAfterNanos = light.silentAfter().toNanos();
        keepAliveNanos = Math.min(KEEP_ALIVE_NANOS, setup.holdoverMillis() * NANOS_PER_MILLI / KEEP_ALIVES_A_HOLDOVER);
        situation = new Situation(signals);
        canvas = light.fitting().canvas();
        stage = stage(light, signals, faults::add);
        adjustment = new Adjustment(canvas);
        alarm = new AlarmWatch(light.alarmSequence());
        dimmers = light.fitting().dimmers();
        encoder = light.strip().make();
        guards = new Guards(setup, light.fitting(), light.guard(), framesPerSecond);
        guards.expectLate(USUALLY_LATE_NANOS);
        wanted = new Frame(setup.stripBytes(), setup.dimmers().size());
        sent = new Frame(setup.stripBytes(), setup.dimmers().size());
    }

    /** Makes each look once, whether a cue puts it on, several do, or somebody asks for it. */
    private static Stage stage(LightSpec light, Signals signals, Consumer<LookFault> faults) {
        Map<LookSpec, Look> made = new HashMap<>();
        Function<LookSpec, Look> looks = look -> made.computeIfAbsent(look, LookSpec::make);
        List<Cue> cues = light.cues().stream()
                .map(cue -> cue.make(looks.apply(cue.look())))
                .toList();
        Map<String, Look> byName = new HashMap<>();
        light.looks().forEach((name, look) -> byName.put(name, looks.apply(look)));
        return new Stage(
                cues, byName, signals, light.fitting().canvas(), light.fitting().canvas(), faults);
    }

    /**
     * Puts the chain of a configuration together. Everything in it is new, whatever other chains of the same configuration have seen.
     *
     * @param config the configuration
     * @return the chain
     */
    public static Chain of(Config config) {
        return of(config.setup(), config.light(), config.framesPerSecond());
    }

    /**
     * Puts a chain together. Everything in it is new.
     *
     * @param setup what is fitted, and the ceilings
     * @param light what is shown, on the same strip and dimmers
     * @param framesPerSecond rate of the frames, 1 or more
     * @return the chain
     */
    public static Chain of(Setup setup, LightSpec light, int framesPerSecond) {
        return new Chain(setup, light, framesPerSecond, new Signals(light.room(), light.own()));
    }

    /**
     * Puts together the chain that another configuration asks for, to follow one that runs. Signals go on where they are.
     *
     * @param before the chain that runs
     * @param next the configuration; the rate of the frames is that of {@code before}, whatever it says
     * @return the chain; it is to {@link #takeOver} before its first frame
     */
    static Chain after(Chain before, Config next) {
        LightSpec light = next.light();
        boolean same = light.room().equals(before.light.room()) && light.own().equals(before.light.own());
        Signals signals = same ? before.signals : new Signals(light.room(), light.own());
        return new Chain(next.setup(), light, before.framesPerSecond, signals);
    }

    /**
     * How long frames are sure to be the same as the last, if the status is the same and nobody asks for anything else.
     *
     * @param nanos the time of the last frame
     * @return ns; 0 if the next one may differ
     */
    long restNanos(long nanos) {
        return rests ? Math.max(0, stillUntil - nanos) : 0;
    }

    /**
     * How often light that stands still is to be sent, so that the controller neither takes the host for gone nor stays as it is after
     * trouble.
     *
     * @return ns from one frame to the next at most
     */
    long keepAliveNanos() {
        return keepAliveNanos;
    }

    /**
     * The frame rate that the guards go by.
     *
     * @return frames a second
     */
    int framesPerSecond() {
        return framesPerSecond;
    }

    /**
     * Begins with the light that another chain shows, so that the first look fades in over it. Where the strip is another one, it
     * begins dark. The guards, the alarm and what people asked for go on where they are.
     *
     * @param before the chain that ran up to now
     * @return whether the light of the last second is known; if not, another second must pass before the first frame
     */
    boolean takeOver(Chain before) {
        stage.beginWith(before.stage);
        adjustment.takeOver(before.adjustment);
        alarm.takeOver(before.alarm);
        return guards.takeOver(before.guards);
    }

    /**
     * Makes the look that somebody asks for, if it is one that no cue puts on, so that no frame waits for it. Any thread may do so, before
     * frames with these wishes are made.
     *
     * @param wishes what people have asked for
     */
    public synchronized void prepare(Wishes wishes) {
        String name = wishes.name(Wish.LOOK);
        if (!stage.knows(name)) {
            light.look(name).ifPresent(look -> stage.add(look.make()));
        }
    }

    /**
     * Takes into account what became of frames, from the next frame on.
     *
     * @param delivery what is out of the ordinary
     */
    public void delivered(Delivery delivery) {
        guards.wereLate(delivery.lateNanos());
        if (delivery.relit()) {
            guards.relit();
        }
    }

    /**
     * Makes a frame for which nobody has asked for anything.
     *
     * @param status what is known of the printer
     * @param nanos the time, on the clock of the status, never earlier than the one before
     * @param frame where to write it
     * @return whether it differs from the frame before
     */
    public boolean make(PrinterStatus status, long nanos, Frame frame) {
        return make(status, Wishes.NONE, nanos, frame);
    }

    /**
     * Makes a frame. What cannot differ from the frame before is not made again: light that stands still costs next to nothing, and is the
     * same to the last byte.
     *
     * @param status what is known of the printer
     * @param wishes what people have asked for
     * @param nanos the time, on the clock of the status, never earlier than the one before
     * @param frame where to write it
     * @return whether it differs from the frame before
     */
    public boolean make(PrinterStatus status, Wishes wishes, long nanos, Frame frame) {
        boolean sameInputs = made && ending.isEmpty() && status == drawnStatus && wishes == drawnWishes;
        boolean sameLight = sameInputs && nanos - stillUntil < 0;
        if (sameLight) {
            stage.pass(nanos);
            adjustment.pass(nanos);
        } else {
            stillUntil = nanos;
            draw(status, wishes, nanos, frame);
            stillUntil = nanos + (sameInputs ? stillFor(status, nanos) : 0);
            sameLight = made && wanted.sameAs(frame);
        }
        rests = sameLight && guards.pass(nanos);
        if (rests) {
            frame.copyFrom(sent);
            return false;
        }
        return hold(sameLight, nanos, frame);
    }

    /** Makes the wanted light lawful. Returns whether the frame differs from the one before. */
    private boolean hold(boolean sameLight, long nanos, Frame frame) {
        if (sameLight) {
            frame.copyFrom(wanted);
        } else {
            wanted.copyFrom(frame);
        }
        boolean first = !made;
        made = false;
        guards.hold(frame, nanos);
        made = true;
        boolean differs = first || !sent.sameAs(frame);
        sent.copyFrom(frame);
        return differs;
    }

    private void draw(PrinterStatus status, Wishes wishes, long nanos, Frame frame) {
        drawnStatus = status;
        drawnWishes = wishes;
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
    }

    /** How long the light that was drawn stays as it is, in ns. */
    private long stillFor(PrinterStatus status, long nanos) {
        boolean settled = adjustment.isSettled() && encoder.isSteady();
        return settled ? Math.min(stage.stillFor(situation), status.stateStillFor(nanos, silentAfterNanos)) : 0;
    }

    private float level(int dimmer) {
        Fitting.DimmerUse use = dimmers.get(dimmer);
        return use.isColour() ? canvas.rgba()[4 * use.colourPixel() + use.channel()] : canvas.dimmers()[dimmer];
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
     * Whether the printer still has its fault.
     *
     * @return as of the last frame
     */
    public boolean faultLasts() {
        return alarm.faultLasts();
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
     * What this follows.
     *
     * @return the signals that Lampwright knows and those of the user's own; the same list each time
     */
    List<Signal> followed() {
        return signals.all();
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
        return faultsToRead;
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
