package dev.lampwright.engine;

import dev.lampwright.config.LightSpec;
import dev.lampwright.config.ViewSpec;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookFault;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Creates the views of a chain. */
final class Views {
    private final LightSpec light;
    private final FollowedPrinters printers;
    private final Consumer<LookFault> faults;
    private final Set<String> owned = new HashSet<>();

    /**
     * Prepares to make views.
     *
     * @param light what is shown
     * @param printers the printers
     * @param faults takes each part of a look that fails, once
     */
    Views(LightSpec light, FollowedPrinters printers, Consumer<LookFault> faults) {
        this.light = light;
        this.printers = printers;
        this.faults = faults;
        light.views().forEach(view -> owned.addAll(view.lights()));
    }

    /** New views: those of the light, plus one of the remaining pixels, if there are any; or one of everything if it is not divided. */
    List<View> all() {
        Stream<View> rest = light.rest().map(this::rest).stream();
        return light.views().isEmpty()
                ? List.of(whole())
                : Stream.concat(light.views().stream().map(this::part), rest).toList();
    }

    private View rest(ViewSpec spec) {
        return new View(
                place(spec),
                light.in(spec).dark(),
                printers.nobody(),
                printers.states(),
                look -> light.in(spec, look),
                faults);
    }

    private View whole() {
        int pixels = light.fitting().canvasPixels();
        boolean[] dimmers = new boolean[light.fitting().dimmers().size()];
        Arrays.fill(dimmers, true);
        View.Place place = new View.Place("", IntStream.range(0, pixels).toArray(), dimmers, pixels);
        return new View(place, light, printers.get(0), printers.states(), look -> look, faults);
    }

    private View part(ViewSpec spec) {
        return new View(
                place(spec),
                light.in(spec),
                printers.get(spec.printer()),
                printers.states(),
                look -> light.in(spec, look),
                faults);
    }

    private View.Place place(ViewSpec spec) {
        Fitting fitting = light.fitting();
        boolean[] dimmers = new boolean[fitting.dimmers().size()];
        for (int i = 0; i < dimmers.length; i++) {
            String name = fitting.dimmers().get(i).name();
            dimmers[i] = spec.lights().contains(name) || !owned.contains(name);
        }
        return new View.Place(spec.name(), spec.places(fitting), dimmers, fitting.canvasPixels());
    }
}
