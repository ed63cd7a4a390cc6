package dev.lampwright.engine;

import dev.lampwright.colour.Encoder;
import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wishes;
import dev.lampwright.guard.Guards;
import dev.lampwright.look.Canvas;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookFault;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Turns statuses, wishes and time into bytes: the same input at the same times gives the same bytes, on any machine. Each {@link View}
 * draws its part of the strip; one encoder and one set of guards produce the bytes for the whole strip. For one thread; allocates nothing
 * once warm.
 */
public final class Chain {
    /**
     * The longest time that a frame usually takes until it is shown. Our own choice: about what 300 pixels take at 115 200 baud; longer
     * times are measured.
     */
    static final long USUALLY_LATE_NANOS = 100_000_000;

    private static final double FULL_DUTY = 65_535;

    /** Our own choice: a controller that has lost its light shows it again before anybody notices. */
    private static final long KEEP_ALIVE_NANOS = 250_000_000;

    /** So that three in a row may get lost. */
    private static final int KEEP_ALIVES_A_HOLDOVER = 4;

    private static final long NANOS_PER_MILLI = 1_000_000;

    private final int framesPerSecond;
    private final LightSpec light;
    private final long keepAliveNanos;
    private final FollowedPrinters printers;
    /** The configured views, and one of the pixels that are in none of them. */
    private final List<View> views;

    private final List<Fitting.DimmerUse> dimmers;
    private final Encoder encoder;
    private final Guards guards;
    private final List<LookFault> faults = new ArrayList<>();
    private final List<LookFault> faultsToRead = Collections.unmodifiableList(faults);
    /** The canvas on which several views are combined. */
    private final Canvas all;

    private Optional<Ending> ending = Optional.empty();
    private Canvas canvas;
    private Wishes drawnWishes = Wishes.NONE;
    /** The light stays the same until then, unless something new is heard or asked for. */
    private long stillUntil;

    private boolean rests;
    private boolean made;
    /** The last frame before the guards, and after them. */
    private final Frame wanted;

    private final Frame sent;

    private Chain(Setup setup, LightSpec light, int framesPerSecond, FollowedPrinters printers) {
        this.framesPerSecond = framesPerSecond;
        this.light = light;
        this.printers = printers;
        keepAliveNanos = Math.min(KEEP_ALIVE_NANOS, setup.holdoverMillis() * NANOS_PER_MILLI / KEEP_ALIVES_A_HOLDOVER);
        views = new Views(light, printers, faults::add).all();
        all = light.fitting().canvas();
        canvas = light.views().isEmpty() ? views.get(0).canvas() : all;
        dimmers = light.fitting().dimmers();
        encoder = light.strip().make();
        guards = new Guards(setup, light.fitting(), light.guard(), framesPerSecond);
        guards.expectLate(USUALLY_LATE_NANOS);
        wanted = new Frame(setup.stripBytes(), setup.dimmers().size());
        sent = new Frame(setup.stripBytes(), setup.dimmers().size());
    }

    /**
     * Builds the chain of a configuration. Everything in it is new, independent of other chains of the same configuration.
     *
     * @param config the configuration
     * @return the chain
     */
    public static Chain of(Config config) {
        return of(config.setup(), config.light(), config.framesPerSecond());
    }

    /**
     * Builds a chain. Everything in it is new.
     *
     * @param setup what is fitted, and the ceilings
     * @param light what is shown, on the same strip and dimmers
     * @param framesPerSecond rate of the frames, 1 or more
     * @return the chain
     */
    public static Chain of(Setup setup, LightSpec light, int framesPerSecond) {
        return new Chain(setup, light, framesPerSecond, FollowedPrinters.of(light));
    }

    /**
     * Builds the chain of another configuration, to follow a running one. Signals continue.
     *
     * @param before the running chain
     * @param next the configuration; the rate of the frames is that of {@code before}, whatever this says
     * @return the chain; call {@link #takeOver} before its first frame
     */
    static Chain after(Chain before, Config next) {
        FollowedPrinters printers = FollowedPrinters.after(before.printers, next.light());
        return new Chain(next.setup(), next.light(), before.framesPerSecond, printers);
    }

    /**
     * How long frames are certain to be the same as the last, if the status stays the same and nobody asks for anything else.
     *
     * @param nanos the time of the last frame
     * @return ns; 0 if the next one may differ
     */
    long restNanos(long nanos) {
        return rests ? Math.max(0, stillUntil - nanos) : 0;
    }

    /**
     * How often still light is sent, so that the controller neither assumes that the host is gone nor keeps wrong light after a problem.
     *
     * @return the maximum time from one frame to the next, in ns
     */
    long keepAliveNanos() {
        return keepAliveNanos;
    }

    /**
     * The frame rate that the guards use.
     *
     * @return frames a second
     */
    int framesPerSecond() {
        return framesPerSecond;
    }

    /**
     * Starts with the light that another chain shows, so that the first look fades in over it. If the strip has changed, it starts dark.
     * The guards, the alarm and the asks continue.
     *
     * @param before the chain that has been running
     * @return whether the light of the last second is known; if not, another second must pass before the first frame
     */
    boolean takeOver(Chain before) {
        Canvas seen = before.looksAlone();
        for (View view : views) {
            if (seen.sameSizeAs(all)) {
                view.beginWith(seen);
            }
            view.takeOver(before.views.stream()
                    .filter(other -> other.name().equals(view.name()))
                    .findFirst()
                    .orElse(before.views.get(0)));
        }
        printers.takeOver(before.printers, before.drawnWishes);
        return guards.takeOver(before.guards);
    }

    /** The light drawn by looks, before it is dimmed or anything is drawn over it. */
    private Canvas looksAlone() {
        Canvas seen = light.fitting().canvas();
        views.forEach(view -> view.putLookOn(seen));
        return seen;
    }

    /**
     * Creates the look that somebody asks for, if no cue uses it, so that no frame waits for it. Any thread may call this, before frames
     * with these wishes are made.
     *
     * @param wishes what people have asked for
     */
    public synchronized void prepare(Wishes wishes) {
        views.forEach(view -> view.prepare(wishes));
    }

    /**
     * Which cues held in the last frame, in any view. Any thread may ask.
     *
     * @return whether it did, for each of {@link LightSpec#cues}
     */
    List<Boolean> held() {
        Boolean[] held = new Boolean[light.cues().size()];
        Arrays.fill(held, false);
        for (View view : views) {
            List<Boolean> there = view.held();
            for (int i = 0; there.size() == held.length && i < held.length; i++) {
                held[i] |= there.get(i);
            }
        }
        return List.of(held);
    }

    /**
     * Takes a look of no configuration, which wishes can name from then on. Any thread may do so, before frames with such wishes are made.
     *
     * @param look made for the same lights; another of its name is forgotten
     */
    synchronized void lend(LookSpec look) {
        views.forEach(view -> view.lend(look));
    }

    /**
     * Keeps signals at values, whatever printers report, to see what light they make. Before the first frame.
     *
     * @param values by signal of this light; NaN for unknown
     */
    public void hold(Map<Signal, Double> values) {
        printers.all().forEach(printer -> values.forEach(printer.signals()::hold));
    }

    /**
     * Takes into account what became of frames, from the next frame on.
     *
     * @param delivery what is unusual about them
     */
    public void delivered(Delivery delivery) {
        guards.wereLate(delivery.lateNanos());
        if (delivery.relit()) {
            guards.relit();
        }
    }

    /**
     * Makes a frame without any asks.
     *
     * @param status what is known about the printer, or about each of several
     * @param nanos the time, on the clock of the status, never earlier than the previous one
     * @param frame where to write it
     * @return whether it differs from the previous frame
     */
    public boolean make(PrinterStatus status, long nanos, Frame frame) {
        return make(status, Wishes.NONE, nanos, frame);
    }

    /**
     * Makes a frame for one printer, or for several that all have the same status.
     *
     * @param status what is known about the printer, or about each of several
     * @param wishes what people have asked for
     * @param nanos the time, on the clock of the status, never earlier than the previous one
     * @param frame where to write it
     * @return whether it differs from the previous frame
     */
    public boolean make(PrinterStatus status, Wishes wishes, long nanos, Frame frame) {
        printers.take(status);
        return makeOfTaken(wishes, nanos, frame);
    }

    /**
     * Makes a frame. If nothing can differ from the previous frame, nothing is computed: light that does not change costs next to nothing,
     * and stays the same to the last byte.
     *
     * @param statuses what is known about the printers
     * @param wishes what people have asked for
     * @param nanos the time, on the clock of the statuses, never earlier than the previous one
     * @param frame where to write it
     * @return whether it differs from the previous frame
     */
    public boolean make(Statuses statuses, Wishes wishes, long nanos, Frame frame) {
        printers.take(statuses);
        return makeOfTaken(wishes, nanos, frame);
    }

    private boolean makeOfTaken(Wishes wishes, long nanos, Frame frame) {
        boolean sameInputs = made && ending.isEmpty() && printers.isSame() && wishes == drawnWishes;
        boolean sameLight = sameInputs && nanos - stillUntil < 0;
        if (sameLight) {
            pass(nanos);
        } else {
            stillUntil = nanos;
            draw(wishes, nanos, frame);
            stillUntil = nanos + (sameInputs ? stillFor(nanos) : 0);
            sameLight = made && wanted.sameAs(frame);
        }
        rests = sameLight && guards.pass(nanos);
        if (rests) {
            frame.copyFrom(sent);
            return false;
        }
        return hold(sameLight, nanos, frame);
    }

    private void pass(long nanos) {
        for (int i = 0; i < views.size(); i++) {
            views.get(i).pass(nanos);
        }
    }

    /** Applies the guards to the wanted light. Returns whether the frame differs from the previous one. */
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

    private void draw(Wishes wishes, long nanos, Frame frame) {
        drawnWishes = wishes;
        printers.moveTo(nanos, wishes);
        if (light.views().isEmpty()) {
            views.get(0).draw(wishes, nanos);
            canvas = views.get(0).canvas();
        } else {
            drawViews(wishes, nanos);
        }
        if (ending.isPresent()) {
            ending.get().dim(canvas, nanos);
        }
        encoder.encode(canvas.rgba(), frame.strip());
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = (int) Math.round(Math.max(0, Math.min(1, level(i))) * FULL_DUTY);
        }
    }

    private void drawViews(Wishes wishes, long nanos) {
        all.clear();
        for (int i = 0; i < views.size(); i++) {
            views.get(i).draw(wishes, nanos);
            views.get(i).putOn(all);
        }
    }

    /** How long the light stays the same, in ns. */
    private long stillFor(long nanos) {
        long still = encoder.isSteady() ? printers.stillFor(nanos) : 0;
        for (int i = 0; i < views.size() && still > 0; i++) {
            still = Math.min(still, views.get(i).stillFor());
        }
        return still;
    }

    private float level(int dimmer) {
        Fitting.DimmerUse use = dimmers.get(dimmer);
        return use.isColour() ? canvas.rgba()[4 * use.colourPixel() + use.channel()] : canvas.dimmers()[dimmer];
    }

    /**
     * The state that the last frame shows; of several printers, that of the one that needs attention most.
     *
     * @return silent before the first
     */
    public PrinterState state() {
        return printers.first().state();
    }

    /**
     * The state of the alarm; of several printers, that of the one that needs attention most.
     *
     * @return normal before the first frame
     */
    public AlarmState alarm() {
        return printers.first().alarm();
    }

    /**
     * The name of the current look, or the one fading in; of several printers, that of the one that needs attention most.
     *
     * @return as in the configuration
     */
    public String look() {
        return lookOf(printers.first());
    }

    /** The look of the first view that shows a printer. */
    String lookOf(FollowedPrinter printer) {
        for (int i = 0; i < views.size(); i++) {
            if (views.get(i).printer() == printer) {
                return views.get(i).look().name();
            }
        }
        return "";
    }

    /**
     * The printers that are shown.
     *
     * @return in the order of the configuration; the same list each time
     */
    List<FollowedPrinter> printers() {
        return printers.all();
    }

    /**
     * What this follows.
     *
     * @return the signals that Lampwright knows and the user-defined ones, of each printer if they have names; the same list each time
     */
    List<Signal> followed() {
        return printers.reported();
    }

    /**
     * The value of a signal.
     *
     * @param signal which
     * @param nanos the time of the last frame
     * @return the value, NaN if unknown
     */
    double signal(Signal signal, long nanos) {
        return printers.value(signal, nanos);
    }

    /**
     * Fades out all light from now on.
     *
     * @param how when it starts, and how fast
     */
    void end(Ending how) {
        ending = Optional.of(how);
    }

    /**
     * What has failed to draw so far and stays dark.
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
     * The guards, for example to ask what the last frame draws.
     *
     * @return the same each time
     */
    public Guards guard() {
        return guards;
    }
}
