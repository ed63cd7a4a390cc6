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
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * From statuses, wishes and time to bytes: the same ones at the same times give the same bytes, on any machine. Each {@link View} draws its
 * part of the strip; one encoder and one set of guards make bytes of the whole. For one thread; allocates nothing once warm.
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
    private final long keepAliveNanos;
    private final FollowedPrinters printers;
    /** Those of the light, and one of the pixels that are in none of them. */
    private final List<View> views;

    private final List<Fitting.DimmerUse> dimmers;
    private final Encoder encoder;
    private final Guards guards;
    private final List<LookFault> faults = new ArrayList<>();
    private final List<LookFault> faultsToRead = Collections.unmodifiableList(faults);
    /** Where several views come together. */
    private final Canvas all;

    private Optional<Ending> ending = Optional.empty();
    private Canvas canvas;
    private Wishes drawnWishes = Wishes.NONE;
    /** Light that was drawn stays as it is until then, unless something new is heard or asked for. */
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
        return new Chain(setup, light, framesPerSecond, FollowedPrinters.of(light));
    }

    /**
     * Puts together the chain that another configuration asks for, to follow one that runs. Signals go on where they are.
     *
     * @param before the chain that runs
     * @param next the configuration; the rate of the frames is that of {@code before}, whatever it says
     * @return the chain; it is to {@link #takeOver} before its first frame
     */
    static Chain after(Chain before, Config next) {
        FollowedPrinters printers = FollowedPrinters.after(before.printers, next.light());
        return new Chain(next.setup(), next.light(), before.framesPerSecond, printers);
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

    /** The light that looks have drawn, before it is dimmed or anything is laid over it. */
    private Canvas looksAlone() {
        Canvas seen = light.fitting().canvas();
        views.forEach(view -> view.putLookOn(seen));
        return seen;
    }

    /**
     * Makes the look that somebody asks for, if it is one that no cue puts on, so that no frame waits for it. Any thread may do so, before
     * frames with these wishes are made.
     *
     * @param wishes what people have asked for
     */
    public synchronized void prepare(Wishes wishes) {
        views.forEach(view -> view.prepare(wishes));
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
     * @param status what is known of the printer, or of every one of several
     * @param nanos the time, on the clock of the status, never earlier than the one before
     * @param frame where to write it
     * @return whether it differs from the frame before
     */
    public boolean make(PrinterStatus status, long nanos, Frame frame) {
        return make(status, Wishes.NONE, nanos, frame);
    }

    /**
     * Makes a frame for one printer, or for several that all have the same status.
     *
     * @param status what is known of the printer, or of every one of several
     * @param wishes what people have asked for
     * @param nanos the time, on the clock of the status, never earlier than the one before
     * @param frame where to write it
     * @return whether it differs from the frame before
     */
    public boolean make(PrinterStatus status, Wishes wishes, long nanos, Frame frame) {
        printers.take(status);
        return makeOfTaken(wishes, nanos, frame);
    }

    /**
     * Makes a frame. What cannot differ from the frame before is not made again: light that does not change costs next to nothing, and
     * stays the same to the last byte.
     *
     * @param statuses what is known of the printers
     * @param wishes what people have asked for
     * @param nanos the time, on the clock of the statuses, never earlier than the one before
     * @param frame where to write it
     * @return whether it differs from the frame before
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

    /** How long the light that was drawn stays as it is, in ns. */
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
     * The state that the last frame shows; of several printers, that of the one that needs a person most.
     *
     * @return silent before the first
     */
    public PrinterState state() {
        return printers.first().state();
    }

    /**
     * Where the alarm stands; of several printers, that of the one that needs a person most.
     *
     * @return normal before the first frame
     */
    public AlarmState alarm() {
        return printers.first().alarm();
    }

    /**
     * The name of the look that is on, or fading in; of several printers, that of the one that needs a person most.
     *
     * @return as the configuration has it
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
     * @return the signals that Lampwright knows and those of the user's own, of each printer if they have names; the same list each time
     */
    List<Signal> followed() {
        return printers.reported();
    }

    /**
     * The value of a signal.
     *
     * @param signal which
     * @param nanos the time of the last frame
     * @return the value, NaN if it is unknown
     */
    double signal(Signal signal, long nanos) {
        return printers.value(signal, nanos);
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
