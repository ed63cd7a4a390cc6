package dev.lampwright.config;

import static java.util.Map.entry;

import dev.lampwright.look.Blend;
import dev.lampwright.look.ExtentSpec;
import dev.lampwright.look.LayerSpec;
import dev.lampwright.look.Level;
import dev.lampwright.look.PaintSpec;
import dev.lampwright.look.Rhythm;
import dev.lampwright.look.Zone;
import java.util.Map;

/** One layer of a look as it stands in the file. */
final class LayerKeys {
    private static final Map<String, Blend> BLENDS = Words.of(Blend.values(), Blend::word);
    private static final String WANTED_RHYTHM =
            "give a rhythm as charts have it, for instance \"Iso 2s\", \"Fl(2) 6s\", \"Q\" or \"swell 4s\"";

    private static final String FOR_GRADIENTS = "paint = \"ramp\" or \"scale\"";
    private static final String FOR_SIGNALS = "paint = \"scale\", extent = \"bar\" or \"pointer\"";
    private static final String FOR_MOVEMENT = "paint = \"ramp\" or extent = \"band\"";
    private static final String FOR_EMBERS = "paint = \"ember\"";
    private static final String FOR_GRAINS = "extent = \"grains\"";

    /** What each key goes with that not every layer has a use for. */
    private static final Map<String, String> GOES_WITH = Map.ofEntries(
            entry("colour", "paint = \"solid\""),
            entry("colours", FOR_GRADIENTS),
            entry("interpolation", FOR_GRADIENTS),
            entry("steps", FOR_GRADIENTS),
            entry("stops", FOR_GRADIENTS),
            entry("by", FOR_SIGNALS),
            entry("from", FOR_SIGNALS),
            entry("to", FOR_SIGNALS),
            entry("speed_px_per_s", FOR_MOVEMENT),
            entry("speed_zones_per_s", FOR_MOVEMENT),
            entry("cycle_s", FOR_MOVEMENT),
            entry("brightest_K", FOR_EMBERS),
            entry("spark_K", FOR_EMBERS),
            entry("sparks_per_px_s", FOR_EMBERS),
            entry("diffusion_px2_per_s", FOR_EMBERS),
            entry("cooling_s", FOR_EMBERS),
            entry("seed", FOR_EMBERS + " or " + FOR_GRAINS),
            entry("width_px", "extent = \"pointer\" or \"band\""),
            entry("softness_px", "extent = \"bar\", \"pointer\" or \"band\""),
            entry("tail_px", "extent = \"band\""),
            entry("repeat_px", "extent = \"band\""),
            entry("density", FOR_GRAINS),
            entry("glint_s", FOR_GRAINS),
            entry("opacity_from", "opacity_by"),
            entry("opacity_to", "opacity_by"));

    private LayerKeys() {}

    /**
     * Reads a layer.
     *
     * @param table the layer
     * @param zones the zones by name
     * @return the layer
     */
    static LayerSpec read(Table table, Map<String, Zone> zones) {
        Zone zone = table.named("zone", "zone", zones).orElse(zones.get(ZonesSection.STRIP));
        PaintSpec paint = PaintKeys.read(table);
        ExtentSpec extent = ExtentKeys.read(table);
        Rhythm rhythm = table.parsed("rhythm", WANTED_RHYTHM, Rhythm::parse).orElse(Rhythm.FIXED);
        Level opacity = opacity(table);
        Blend blend = table.oneOf("blend", BLENDS).orElse(Blend.NORMAL);
        table.noteUseless(GOES_WITH);
        return new LayerSpec(zone, paint, extent, rhythm, opacity, blend);
    }

    private static Level opacity(Table table) {
        double fixed = table.numberIfThere("opacity", 0, 1).orElse(1);
        if (!table.has("opacity_by")) {
            return Level.fixed(fixed);
        }
        if (table.has("opacity")) {
            table.mistake("opacity_by", "stands beside opacity", "keep one of the two");
        }
        return Level.by(FollowKeys.read(table, "opacity_"));
    }
}
