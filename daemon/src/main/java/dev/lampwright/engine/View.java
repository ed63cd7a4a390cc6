package dev.lampwright.engine;

import dev.lampwright.config.LightSpec;
import dev.lampwright.cue.Adjustment;
import dev.lampwright.cue.Cue;
import dev.lampwright.cue.Situation;
import dev.lampwright.cue.Stage;
import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.look.Canvas;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Look;
import dev.lampwright.look.LookFault;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/**
 * A part of the strip, or the whole of it, that shows one printer: its look, what people ask for on top, and its own canvas for both. For
 * one thread; allocates nothing after construction.
 */
final class View {
    private final Place place;
    private final LightSpec light;
    private final FollowedPrinter printer;
    private final Situation situation;
    private final Stage stage;
    private final UnaryOperator<LookSpec> here;
    private final Adjustment adjustment;
    private Canvas canvas;

    /** Where a view is. */
    static final class Place {
        private final String name;
        private final int[] places;
        private final boolean[] dimmers;
        private final int whole;

        /**
         * The arrays must not be modified afterwards.
         *
         * @param name its name; empty for the whole strip
         * @param places for each pixel of the view's canvas, its index on the whole canvas
         * @param dimmers for each dimmer, whether the view sets its level
         * @param whole pixels of the whole canvas
         */
        Place(String name, int[] places, boolean[] dimmers, int whole) {
            this.name = name;
            this.places = places;
            this.dimmers = dimmers;
            this.whole = whole;
        }
    }

    /**
     * Creates a dark view.
     *
     * @param place where it is
     * @param light what is shown there
     * @param printer the printer that it shows
     * @param states what all printers are doing, kept up to date
     * @param here gives for a look of the whole strip the one that is shown there
     * @param faults takes each part of a look that fails, once
     */
    View(
            Place place,
            LightSpec light,
            FollowedPrinter printer,
            PrinterState[] states,
            UnaryOperator<LookSpec> here,
            Consumer<LookFault> faults) {
        this.place = place;
        this.light = light;
        this.here = here;
        this.printer = printer;
        situation = new Situation(printer.signals(), place.name, states);
        canvas = light.fitting().canvas();
        stage = stage(light, printer, faults);
        adjustment = new Adjustment(canvas, place.places, place.whole);
    }

    /** Creates each look once, whether it is used by one cue, several, or only an ask. */
    private static Stage stage(LightSpec light, FollowedPrinter printer, Consumer<LookFault> faults) {
        Map<LookSpec, Look> made = new HashMap<>();
        Function<LookSpec, Look> looks = look -> made.computeIfAbsent(look, LookSpec::make);
        List<Cue> cues = light.cues().stream()
                .map(cue -> cue.make(looks.apply(cue.look())))
                .toList();
        Map<String, Look> byName = new HashMap<>();
        light.looks().forEach((name, look) -> byName.put(name, looks.apply(look)));
        Fitting fitting = light.fitting();
        return new Stage(cues, byName, printer.signals(), fitting.canvas(), fitting.canvas(), faults);
    }

    String name() {
        return place.name;
    }

    FollowedPrinter printer() {
        return printer;
    }

    /** The light of the last frame. */
    Canvas canvas() {
        return canvas;
    }

    /** The current look, or the one fading in. */
    Look look() {
        return stage.look();
    }

    /** Creates the look that was asked for, if no cue uses it. Any thread may call this, one at a time. */
    void prepare(Wishes wishes) {
        String name = wishes.name(Wish.LOOK);
        if (!stage.knows(name) && !light.looks().isEmpty()) {
            light.look(name).ifPresent(look -> stage.add(look.make()));
        }
    }

    /** Which cues held in the last frame, in their order. Any thread may ask. */
    List<Boolean> held() {
        return stage.held();
    }

    /** Takes a look of no configuration that somebody may ask for. Any thread may do so, one at a time. */
    void lend(LookSpec look) {
        if (!light.looks().isEmpty()) {
            stage.add(here.apply(look).make());
        }
    }

    /** Draws a frame, after its printer has been advanced. */
    void draw(Wishes wishes, long nanos) {
        situation.moveTo(printer.status(), printer.state(), nanos);
        situation.take(wishes, printer.alarm());
        canvas = adjustment.adjust(stage.draw(situation), situation);
    }

    /** Lets time pass while the light stays as it is. */
    void pass(long nanos) {
        stage.pass(nanos);
        adjustment.pass(nanos);
    }

    /** How long the light stays the same, in ns, if nothing new is heard or asked for. */
    long stillFor() {
        return adjustment.isSettled() ? stage.stillFor(situation) : 0;
    }

    /** Copies the light of the last frame to its place. If several views set a lamp, the brightest counts. */
    void putOn(Canvas all) {
        put(canvas, all);
    }

    private void put(Canvas from, Canvas all) {
        int[] places = place.places;
        for (int here = 0; here < places.length; here++) {
            System.arraycopy(from.rgba(), 4 * here, all.rgba(), 4 * places[here], 4);
        }
        for (int i = 0; i < place.dimmers.length; i++) {
            if (place.dimmers[i]) {
                all.dimmers()[i] = Math.max(all.dimmers()[i], from.dimmers()[i]);
            }
        }
    }

    /** Copies the light of its look to its place, without any wishes applied. */
    void putLookOn(Canvas all) {
        put(stage.seen(), all);
    }

    /** Starts with the light that looks have drawn so far. */
    void beginWith(Canvas all) {
        Canvas seen = stage.seen();
        int[] places = place.places;
        for (int here = 0; here < places.length; here++) {
            System.arraycopy(all.rgba(), 4 * places[here], seen.rgba(), 4 * here, 4);
        }
        System.arraycopy(all.dimmers(), 0, seen.dimmers(), 0, seen.dimmers().length);
    }

    /** Continues the fades to what people asked for from where another view has reached. */
    void takeOver(View before) {
        adjustment.takeOver(before.adjustment);
    }
}
