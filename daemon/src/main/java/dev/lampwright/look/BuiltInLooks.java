package dev.lampwright.look;

import dev.lampwright.colour.CssColour;
import dev.lampwright.colour.Light;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The looks that are there without a word of configuration, one for each state. They differ in shape and rhythm as well as in
 * colour, so that they can be told apart without seeing colours.
 */
public final class BuiltInLooks {
    /** The dimmer that lights the work. */
    public static final String WORK_LIGHT = "work";

    private final int pixels;
    private final PixelRun strip;
    private final Map<String, PixelRun> zones;
    private final List<String> dimmers;

    /**
     * Makes looks for what is fitted.
     *
     * @param pixels pixels of the strip, 0 or more; with 0 only the dimmers are lit
     * @param zones where {@code bed}, {@code nozzle} and {@code job} are
     * @param dimmers names of the dimmers
     */
    public BuiltInLooks(int pixels, Map<String, PixelRun> zones, List<String> dimmers) {
        this.pixels = pixels;
        strip = new PixelRun(0, Math.max(0, pixels - 1));
        this.zones = Map.copyOf(zones);
        this.dimmers = List.copyOf(dimmers);
    }

    /**
     * The look for a state.
     *
     * @param state what the printer is doing
     * @return a new look
     */
    public Look of(PrinterState state) {
        return switch (state) {
            case SILENT -> look(state, 0, Stream.of(even("steelblue", 0.12, "Fl(2) 8s")));
            case IDLE -> look(state, 0, Stream.of(even("oldlace", 0.04, "F")));
            case WARMING ->
                look(state, 0.3, Stream.of(heat("bed", Signal.BED_HEAT), heat("nozzle", Signal.NOZZLE_HEAT)));
            case PRINTING -> look(state, 1, Stream.of(progress("seagreen", "mediumspringgreen", "F")));
            case HELD -> look(state, 0.5, Stream.of(progress("saddlebrown", "orange", "swell 4s")));
            case DONE -> look(state, 0.3, Stream.of(even("green", 0.15, "F"), even("palegreen", 0.7, "swell 6s")));
            case STOPPED -> look(state, 0.1, Stream.of(even("purple", 0.1, "F"), even("mediumorchid", 0.4, "Oc 6s")));
            case FAULT -> look(state, 0.5, Stream.of(even("red", 0.08, "F"), even("red", 1, "Q")));
        };
    }

    private List<Layer> even(String colour, double opacity, String rhythm) {
        return List.of(layer(strip, Paints.solid(light(colour)), Extents.all(), rhythm, opacity));
    }

    /** A bar that fills as the heat rises and turns from blue to orange, on a ground that shows where it will end. */
    private List<Layer> heat(String zone, Signal by) {
        Paint paint = Paints.scale(List.of(light("midnightblue"), light("crimson"), light("orangered")), by);
        return List.of(
                layer(zones.get(zone), Paints.solid(light("midnightblue")), Extents.all(), "F", 0.3),
                layer(zones.get(zone), paint, Extents.bar(by), "F", 1));
    }

    /** A bar that fills as the job goes on, with a bright end, on a ground that is there even while progress is unknown. */
    private List<Layer> progress(String ground, String bar, String rhythm) {
        PixelRun job = zones.get("job");
        Signal by = Signal.JOB_PROGRESS;
        return List.of(
                layer(job, Paints.solid(light(ground)), Extents.all(), "F", 0.06),
                layer(job, Paints.solid(light(bar)), Extents.bar(by), "F", 0.25),
                layer(job, Paints.solid(light(bar)), Extents.bar(by), rhythm, 0.5),
                layer(job, Paints.solid(light("white")), Extents.pointer(by, 1.5), "F", 0.6));
    }

    private static Layer layer(PixelRun zone, Paint paint, Extent extent, String rhythm, double opacity) {
        return new Layer(zone, paint, extent, Rhythm.parse(rhythm), opacity);
    }

    private Look look(PrinterState state, double work, Stream<List<Layer>> parts) {
        float[] levels = new float[dimmers.size()];
        int workAt = dimmers.indexOf(WORK_LIGHT);
        if (workAt >= 0) {
            levels[workAt] = (float) work;
        }
        List<Layer> layers =
                pixels == 0 ? List.of() : parts.flatMap(List::stream).toList();
        return new Look(state.word(), layers, levels);
    }

    private static Light light(String colour) {
        return CssColour.parse(colour);
    }
}
