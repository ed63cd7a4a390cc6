package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.config.ControllerSpec;
import dev.lampwright.config.LightSpec;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookSpec;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Setup;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The same lights on a shorter strip, so that a long one does not take longer to check. Between two pixels at which any zone begins, ends
 * or continues elsewhere, adjacent pixels are left out, about the same proportion of each stretch. The rest is drawn as on the whole strip:
 * pixels are as large, everything moves as fast, and the strip draws as much current.
 */
final class ShortStrip {
    /** How long a strip may be to be drawn whole; our own choice: five metres at 60 pixels a metre. */
    static final int PIXELS = 300;
    /** The minimum left of a stretch: two runs of eight pixels, which the flash limit judges. */
    private static final int LEAST = 16;

    private final Config config;
    private final int pixels;
    /** For each pixel of the canvas, its index on the short strip, −1 if it is left out. */
    private final int[] elsewhere;

    private final int kept;

    private ShortStrip(Config config) {
        this.config = config;
        pixels = config.fitting().pixels();
        elsewhere = new int[config.fitting().canvas().rgba().length / 4];
        kept = keep(seams());
    }

    /**
     * Shortens the strip.
     *
     * @param config a configuration
     * @return the same if its strip is already short; otherwise one whose looks and cues have the same names
     */
    static Config of(Config config) {
        return config.fitting().pixels() <= PIXELS ? config : new ShortStrip(config).config();
    }

    private Config config() {
        LightSpec light = config.light().on(fitting(), zone -> zone.on(elsewhere));
        ControllerSpec controller = config.controller();
        Setup shorter = controller.setup().shortenedTo(kept);
        return config.with(new ControllerSpec(controller.port(), controller.baud(), shorter), light);
    }

    private Fitting fitting() {
        Map<String, Zone> zones = new LinkedHashMap<>();
        config.fitting().zones().forEach((name, zone) -> zones.put(name, zone.on(elsewhere)));
        List<Fitting.DimmerUse> dimmers = config.fitting().dimmers().stream()
                .map(use -> use.isColour()
                        ? new Fitting.DimmerUse(use.name(), elsewhere[use.colourPixel()], use.channel())
                        : use)
                .toList();
        return new Fitting(kept, zones, dimmers);
    }

    /** The pixels that do not follow the previous one in every zone. */
    private BitSet seams() {
        Set<Zone> zones = new LinkedHashSet<>(config.fitting().zones().values());
        config.looks().values().forEach(look -> addZones(look, zones));
        config.cues().forEach(cue -> addZones(cue.look(), zones));
        BitSet seams = new BitSet();
        seams.set(0);
        zones.forEach(zone -> addSeams(zone, seams));
        return seams;
    }

    private static void addZones(LookSpec look, Set<Zone> zones) {
        look.layers().forEach(layer -> zones.add(layer.zone()));
    }

    private void addSeams(Zone zone, BitSet seams) {
        int[] places = new int[elsewhere.length];
        Arrays.fill(places, -1);
        for (int index = 0; index < zone.pixelCount(); index++) {
            places[zone.pixel(index)] = zone.place(index);
        }
        int direction = 0;
        for (int pixel = 1; pixel < pixels; pixel++) {
            int step = places[pixel] - places[pixel - 1];
            boolean inside = places[pixel] >= 0 && places[pixel - 1] >= 0;
            boolean goesOn = inside ? Math.abs(step) == 1 && step != -direction : places[pixel] == places[pixel - 1];
            seams.set(pixel, seams.get(pixel) || !goesOn);
            direction = inside && goesOn ? step : 0;
        }
    }

    /** Keeps the middle of each stretch, so that what a mirrored zone has twice is kept twice. */
    private int keep(BitSet seams) {
        Arrays.fill(elsewhere, -1);
        int count = 0;
        int next;
        for (int first = 0; first < pixels; first = next) {
            next = seams.nextSetBit(first + 1);
            next = next < 0 ? pixels : next;
            int length = next - first;
            int most = Math.min(length, Math.max(LEAST, (int) ((long) length * PIXELS / pixels)));
            int from = first + (length - most) / 2;
            for (int pixel = from; pixel < from + most; pixel++) {
                elsewhere[pixel] = count++;
            }
        }
        for (int beyond = pixels; beyond < elsewhere.length; beyond++) {
            elsewhere[beyond] = count + beyond - pixels;
        }
        return count;
    }
}
