package dev.lampwright.config;

import dev.lampwright.colour.StripSpec;
import dev.lampwright.cue.AlarmSequence;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookSpec;
import dev.lampwright.look.Zone;
import dev.lampwright.signal.Room;
import dev.lampwright.signal.Signal;
import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * What is shown: all that goes into frames beside the controller's set-up and the rate.
 *
 * @param fitting what looks are made for; always has the zones {@code strip}, {@code bed}, {@code nozzle} and {@code job}
 * @param strip how the strip takes light
 * @param looks the looks by name: the built-in ones, unless the file has one of that name, those of the file, and the swatches that its
 *     cues name
 * @param cues what to show when: the file's first, then the built-in ones; the first that holds wins, and the last always holds
 * @param alarmSequence how a fault is shown until it is seen and over
 * @param guard what is chosen about the limits
 * @param silentAfter how long nothing may be heard before the state is {@code silent}
 * @param room where the printer is, and what counts as hot there
 * @param own the signals of the file's own readings
 */
public record LightSpec(
        Fitting fitting,
        StripSpec strip,
        Map<String, LookSpec> looks,
        List<CueSpec> cues,
        AlarmSequence alarmSequence,
        GuardSettings guard,
        Duration silentAfter,
        Room room,
        List<Signal> own) {
    /** Keeps copies of the collections, in their order. */
    public LightSpec {
        looks = Collections.unmodifiableMap(new LinkedHashMap<>(looks));
        cues = List.copyOf(cues);
        own = List.copyOf(own);
    }

    /**
     * A look of any name that there is.
     *
     * @param name that of one of {@link #looks}, or of a swatch, which is read now
     * @return the look; empty if there is none
     */
    public Optional<LookSpec> look(String name) {
        return Optional.ofNullable(looks.get(name)).or(() -> Swatches.look(name, fitting));
    }

    /**
     * The same, with other cues.
     *
     * @param others what to show when; the last always holds
     * @return another description
     */
    public LightSpec showing(List<CueSpec> others) {
        return new LightSpec(fitting, strip, looks, others, alarmSequence, guard, silentAfter, room, own);
    }

    /**
     * The same, with one look all the time.
     *
     * @param look what to show, one of these looks or another for the same fitting
     * @return another description
     */
    public LightSpec showing(LookSpec look) {
        return showing(List.of(CueSpec.always(look)));
    }

    /**
     * The same on another strip.
     *
     * @param other what the looks are made for there, with zones of the same names
     * @param zones for each zone the one on the other strip
     * @return another description
     */
    public LightSpec on(Fitting other, UnaryOperator<Zone> zones) {
        Map<String, LookSpec> others = new LinkedHashMap<>();
        looks.forEach((name, look) -> others.put(name, look.on(zones)));
        List<CueSpec> otherCues = cues.stream()
                .map(cue -> new CueSpec(cue.look().on(zones), cue.conditions(), cue.fadeSeconds(), cue.easing()))
                .toList();
        StripSpec otherStrip = new StripSpec(other.pixels(), strip.order(), strip.calibration(), strip.dithering());
        return new LightSpec(other, otherStrip, others, otherCues, alarmSequence, guard, silentAfter, room, own);
    }

    /**
     * The same, with other guards.
     *
     * @param settings what is chosen about the limits
     * @return another description
     */
    public LightSpec guardedBy(GuardSettings settings) {
        return new LightSpec(fitting, strip, looks, cues, alarmSequence, settings, silentAfter, room, own);
    }
}
