package dev.lampwright.config;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * A part of the strip that shows one printer, as if it were a separate strip. Its looks are drawn with its own zones: {@code strip} is all
 * of it; {@code bed} and {@code nozzle} are its halves and {@code job} is all of it, unless the file says otherwise; any other zone is
 * reduced to the pixels in the view.
 *
 * @param name its name
 * @param printer the place of the printer that it shows, among all
 * @param pixels its pixels on the strip, in its own order; as many places as pixels
 * @param zones its zones in the file, by pixels of the strip
 * @param lights its own lamps and plain colour strips
 */
public record ViewSpec(String name, int printer, Zone pixels, Map<String, Zone> zones, Set<String> lights) {
    /** Keeps copies of the collections. */
    public ViewSpec {
        zones = Collections.unmodifiableMap(new LinkedHashMap<>(zones));
        lights = Set.copyOf(lights);
    }

    /**
     * The pixels of the canvas that this view draws on: its part of the strip, then its plain colour strips.
     *
     * @param whole what is fitted
     * @return for each pixel of the view's own canvas, its index on the whole canvas
     */
    public int[] places(Fitting whole) {
        IntStream strips = whole.dimmers().stream()
                .filter(use -> use.isColour() && lights.contains(use.name()))
                .mapToInt(Fitting.DimmerUse::colourPixel)
                .distinct();
        return IntStream.concat(IntStream.range(0, pixels.pixelCount()).map(pixels::pixel), strips)
                .toArray();
    }

    /**
     * The fitting for looks in this view.
     *
     * @param whole what is fitted
     * @return its part of the strip and of the plain colour strips; every dimmer, so that a look has the same levels in all views
     */
    Fitting fitting(Fitting whole) {
        UnaryOperator<Zone> here = here(whole);
        int[] elsewhere = elsewhere(whole);
        Map<String, Zone> own = new LinkedHashMap<>();
        whole.zones().forEach((zone, all) -> own.put(zone, here.apply(all.named(zone))));
        List<Fitting.DimmerUse> dimmers = whole.dimmers().stream()
                .map(use -> use.isColour() ? colour(use, elsewhere[use.colourPixel()]) : use)
                .toList();
        return new Fitting(pixels.pixelCount(), own, dimmers);
    }

    private static Fitting.DimmerUse colour(Fitting.DimmerUse use, int pixel) {
        return pixel < 0 ? Fitting.DimmerUse.none() : new Fitting.DimmerUse(use.name(), pixel, use.channel());
    }

    /**
     * Which zone of this view a look's zone refers to.
     *
     * @param whole what is fitted
     * @return gives the zone here for a zone of the whole strip
     */
    UnaryOperator<Zone> here(Fitting whole) {
        int[] elsewhere = elsewhere(whole);
        Map<String, Zone> own = new LinkedHashMap<>();
        own.put(ZonesSection.STRIP, Zone.run(0, pixels.pixelCount() - 1).named(ZonesSection.STRIP));
        ZonesSection.usual(pixels.pixelCount()).forEach((zone, here) -> own.put(zone, here.named(zone)));
        zones.forEach((zone, there) -> own.put(zone, there.on(elsewhere).named(zone)));
        return zone -> own.containsKey(zone.name()) ? own.get(zone.name()) : zone.on(elsewhere);
    }

    private int[] elsewhere(Fitting whole) {
        int[] places = places(whole);
        int[] elsewhere = new int[whole.canvasPixels()];
        Arrays.fill(elsewhere, -1);
        for (int here = 0; here < places.length; here++) {
            elsewhere[places[here]] = here;
        }
        return elsewhere;
    }

    /**
     * The same view on another strip.
     *
     * @param elsewhere gives each zone's counterpart on the other strip
     * @return another view with the same name
     */
    ViewSpec on(UnaryOperator<Zone> elsewhere) {
        Map<String, Zone> others = new LinkedHashMap<>();
        zones.forEach((zone, pixelsOfIt) -> others.put(zone, elsewhere.apply(pixelsOfIt)));
        return new ViewSpec(name, printer, elsewhere.apply(pixels), others, lights);
    }
}
