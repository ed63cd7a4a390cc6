package dev.lampwright.config;

import dev.lampwright.look.Blend;
import dev.lampwright.look.ExtentSpec;
import dev.lampwright.look.LayerSpec;
import dev.lampwright.look.Level;
import dev.lampwright.look.PaintSpec;
import dev.lampwright.look.Rhythm;
import dev.lampwright.look.Zone;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** One layer of a look as it stands in the file. */
final class LayerKeys {
    private static final Map<String, Blend> BLENDS = Words.of(Blend.values(), Blend::word);
    private static final String WANTED_RHYTHM =
            "give a rhythm as charts have it, for instance \"Iso 2s\", \"Fl(2) 6s\", \"Q\" or \"swell 4s\"";

    private static final Key<Rhythm> RHYTHM = Key.parsed(
                    "rhythm", "a rhythm as on sea charts", WANTED_RHYTHM, Rhythm::parse)
            .otherwise(Rhythm.FIXED, "F, always on")
            .comment(
                    "\"swell 4s\"",
                    "when it is lit: F, Iso 2s, Oc 4s, Fl 3s, Fl(2) 6s, LFl 10s, Q, VQ, Mo(U) 15s, swell 4s");
    private static final Key<Double> OPACITY =
            Key.number("opacity", 0, 1).otherwise(1.0, "1").comment("0.4", "how much it covers what is below");
    private static final Key<Blend> BLEND = Key.word("blend", BLENDS)
            .otherwise(Blend.NORMAL, Blend.NORMAL.word())
            .comment("\"screen\"", "how it mixes with what is below (W3C Compositing and Blending)");

    /** A layer. */
    static final Section SECTION = section();

    private LayerKeys() {}

    private static Section section() {
        List<Key<?>> keys = new ArrayList<>();
        keys.add(Key.own("zone", "name of a zone or a plain colour strip")
                .without("the whole strip")
                .comment("\"bed\"", "where it is"));
        keys.addAll(PaintKeys.KEYS);
        keys.addAll(ExtentKeys.KEYS);
        keys.addAll(FollowKeys.keys("", "paint = \"scale\", extent = \"bar\" or \"pointer\""));
        keys.addAll(MotionKeys.KEYS);
        keys.add(RHYTHM);
        keys.add(OPACITY);
        keys.add(FollowKeys.keys("opacity_").get(0));
        keys.addAll(FollowKeys.keys("opacity_", "opacity_by").subList(1, 3));
        keys.add(BLEND);
        return new Section("looks.NAME.layers", "a layer: paint × extent × rhythm on a zone", keys);
    }

    /**
     * Reads a layer.
     *
     * @param table the layer
     * @param zones the zones by name
     * @return the layer
     */
    static LayerSpec read(Table table, Map<String, Zone> zones) {
        Zone zone = table.as(SECTION).named("zone", "zone", zones).orElse(zones.get(ZonesSection.STRIP));
        PaintSpec paint = PaintKeys.read(table);
        ExtentSpec extent = ExtentKeys.read(table);
        Rhythm rhythm = table.get(RHYTHM);
        Level opacity = opacity(table);
        Blend blend = table.get(BLEND);
        table.noteUseless();
        return new LayerSpec(zone, paint, extent, rhythm, opacity, blend);
    }

    private static Level opacity(Table table) {
        double fixed = table.get(OPACITY);
        if (!table.has("opacity_by")) {
            return Level.fixed(fixed);
        }
        if (table.has("opacity")) {
            table.mistake("opacity_by", "stands beside opacity", "keep one of the two");
        }
        return Level.by(FollowKeys.read(table, "opacity_"));
    }
}
