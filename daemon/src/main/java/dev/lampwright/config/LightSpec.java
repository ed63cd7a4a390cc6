package dev.lampwright.config;

import dev.lampwright.colour.StripSpec;
import dev.lampwright.cue.AlarmSequence;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Level;
import dev.lampwright.look.LookSpec;
import dev.lampwright.look.Zone;
import dev.lampwright.signal.Room;
import dev.lampwright.signal.Signal;
import java.time.Duration;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * What is shown: everything that determines frames, except the controller's set-up and the frame rate.
 *
 * @param fitting what looks are made for; always has the zones {@code strip}, {@code bed}, {@code nozzle} and {@code job}
 * @param strip how the strip takes light
 * @param looks the looks by name: the built-in ones, unless the file has one with that name, those of the file, and the swatches that its
 *     cues name
 * @param cues what to show when: the file's first, then the built-in ones; the first that holds wins, and the last always holds
 * @param alarmSequence how a fault is shown until it has been acknowledged and is over
 * @param guard the settings of the limits
 * @param printers the printers that are shown, at least one
 * @param views the parts of the strip that show one printer each; empty if the whole strip shows the only one
 * @param own the signals of user-defined readings, those of all printers
 */
public record LightSpec(
        Fitting fitting,
        StripSpec strip,
        Map<String, LookSpec> looks,
        List<CueSpec> cues,
        AlarmSequence alarmSequence,
        GuardSettings guard,
        List<PrinterLight> printers,
        List<ViewSpec> views,
        List<Signal> own) {
    /** Keeps copies of the collections, in their order. */
    public LightSpec {
        looks = Collections.unmodifiableMap(new LinkedHashMap<>(looks));
        cues = List.copyOf(cues);
        printers = List.copyOf(printers);
        views = List.copyOf(views);
        own = List.copyOf(own);
    }

    /**
     * The room of the printer, or of the first of several.
     *
     * @return its room
     */
    public Room room() {
        return printers.get(0).room();
    }

    /**
     * Whether the printers have names.
     *
     * @return false if there is one without a name
     */
    public boolean isNamed() {
        return !printers.get(0).name().isEmpty();
    }

    /**
     * The signals that can be followed by the names of printers, and how many printers are in each state.
     *
     * @return those that the printers have; none if the only one has no name
     */
    public List<Signal> named() {
        return isNamed() ? PrinterLight.named(printers, own) : List.of();
    }

    /**
     * What a view shows, on its own strip and canvas.
     *
     * @param view one of {@link #views}
     * @return the light of that part
     */
    public LightSpec in(ViewSpec view) {
        LightSpec undivided =
                new LightSpec(fitting, strip, looks, cues, alarmSequence, guard, printers, List.of(), own);
        return undivided.on(view.fitting(fitting), view.here(fitting));
    }

    /**
     * A look as a view shows it.
     *
     * @param view one of {@link #views}
     * @param look made for the whole strip
     * @return the look of that part
     */
    public LookSpec in(ViewSpec view, LookSpec look) {
        return look.on(view.here(fitting));
    }

    /**
     * The part of the strip that is in no view. It is dark, except for pixels that are asked for.
     *
     * @return its pixels; empty if there are none, or no views
     */
    public Optional<ViewSpec> rest() {
        BitSet shown = new BitSet();
        views.forEach(view -> Arrays.stream(view.places(fitting)).forEach(shown::set));
        int[] left = IntStream.range(0, fitting.pixels())
                .filter(pixel -> !shown.get(pixel))
                .toArray();
        return views.isEmpty() || left.length == 0
                ? Optional.empty()
                : Optional.of(new ViewSpec("", 0, Zone.of(left), Map.of(), Set.of()));
    }

    /**
     * The same lights without any look.
     *
     * @return the lights, dark except for pixels and levels that are asked for
     */
    public LightSpec dark() {
        List<Level> levels =
                fitting.dimmers().stream().map(dimmer -> Level.fixed(0)).toList();
        LookSpec none = new LookSpec("", List.of(), levels, false);
        return new LightSpec(
                fitting, strip, Map.of(), List.of(CueSpec.always(none)), alarmSequence, guard, printers, views, own);
    }

    /**
     * The same, with a different time until silence.
     *
     * @param after how long any printer may be quiet before it counts as silent
     * @return another description
     */
    public LightSpec silentAfter(Duration after) {
        List<PrinterLight> others = printers.stream()
                .map(printer -> new PrinterLight(printer.name(), after, printer.room(), printer.own()))
                .toList();
        return new LightSpec(fitting, strip, looks, cues, alarmSequence, guard, others, views, own);
    }

    /**
     * A look by any existing name.
     *
     * @param name that of one of {@link #looks}, or of a swatch, which is read now
     * @return the look; empty if there is none
     */
    public Optional<LookSpec> look(String name) {
        return Optional.ofNullable(looks.get(name)).or(() -> Swatches.look(name, fitting));
    }

    /**
     * The same, with different cues.
     *
     * @param others what to show when; the last always holds
     * @return another description
     */
    public LightSpec showing(List<CueSpec> others) {
        return new LightSpec(fitting, strip, looks, others, alarmSequence, guard, printers, views, own);
    }

    /**
     * The same, always showing one look.
     *
     * @param look what to show, one of these looks or another for the same fitting
     * @return another description
     */
    public LightSpec showing(LookSpec look) {
        return showing(List.of(CueSpec.always(look)));
    }

    /**
     * The same for another strip.
     *
     * @param other what the looks are made for there, with zones with the same names
     * @param zones gives each zone's counterpart on the other strip
     * @return another description
     */
    public LightSpec on(Fitting other, UnaryOperator<Zone> zones) {
        Map<String, LookSpec> others = new LinkedHashMap<>();
        looks.forEach((name, look) -> others.put(name, look.on(zones)));
        List<CueSpec> otherCues = cues.stream()
                .map(cue -> new CueSpec(cue.look().on(zones), cue.conditions(), cue.fadeSeconds(), cue.easing()))
                .toList();
        StripSpec otherStrip = new StripSpec(other.pixels(), strip.order(), strip.calibration(), strip.dithering());
        List<ViewSpec> otherViews = views.stream().map(view -> view.on(zones)).toList();
        return new LightSpec(other, otherStrip, others, otherCues, alarmSequence, guard, printers, otherViews, own);
    }

    /**
     * The same, with different guards.
     *
     * @param settings the settings of the limits
     * @return another description
     */
    public LightSpec guardedBy(GuardSettings settings) {
        return new LightSpec(fitting, strip, looks, cues, alarmSequence, settings, printers, views, own);
    }
}
