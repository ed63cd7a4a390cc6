package dev.lampwright.config;

import dev.lampwright.look.Blend;
import dev.lampwright.look.ExtentSpec;
import dev.lampwright.look.LayerSpec;
import dev.lampwright.look.Level;
import dev.lampwright.look.PaintSpec;
import dev.lampwright.look.Rhythm;
import dev.lampwright.look.Zone;
import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One layer of a look as written in the file. */
final class LayerKeys {
    /** The rounding error of binary fractions in ms; not worth a refusal. */
    private static final double NOISE = 1e-6;

    private static final Map<String, Blend> BLENDS = Words.of(Blend.values(), Blend::word);
    private static final String WANTED_RHYTHM =
            "give a rhythm, for instance \"Iso 2s\", \"Fl(2) 6s\", \"swell 4s\" or \"on 0.5s off 1.5s\"";

    private static final Key<Rhythm> RHYTHM = Key.parsed(
                    "rhythm", "a rhythm as on sea charts, or times of your own", WANTED_RHYTHM, LayerKeys::rhythm)
            .of("rhythm")
            .otherwise(Rhythm.FIXED, "F, always on")
            .comment(
                    "\"swell 4s\"",
                    "when it is lit: on 0.5s off 1.5s, swell 4s, F, Iso 2s, Oc 4s, Oc(2) 6s, Fl 3s, Fl(2) 6s, Fl(2+1)"
                            + " 10s, LFl 10s, Q, Q(3) 10s, Q(6)+LFl 15s, VQ, VQ(3) 5s, UQ, Mo(U) 15s");
    private static final Key<Double> EDGE = Key.number("edge_s", 0, 600)
            .without("0.1, or less for times of your own that are shorter")
            .with("rhythm")
            .comment(
                    "0", "how long the light of a rhythm takes to come or go: 0 is hard, as long as it is lit is soft");
    private static final Key<Double> PHASE = Key.number("phase", 0, 1)
            .otherwise(0.0, "0")
            .with("rhythm")
            .comment("0.5", "how much later a rhythm begins, as a share of its period");
    private static final Key<Double> DARK_BELOW = Key.number("dark_below", -1e9, 1e9)
            .with("opacity_by")
            .comment("40", "dark while the signal is below this; without opacity_from and opacity_to full above it");
    private static final Key<Double> FULL_ABOVE = Key.number("full_above", -1e9, 1e9)
            .with("opacity_by")
            .comment("220", "full once the signal is above this; without opacity_from and opacity_to dark below it");
    private static final Key<Double> OPACITY =
            Key.number("opacity", 0, 1).otherwise(1.0, "1").comment("0.4", "how much it covers what is below");
    private static final Key<Blend> BLEND = Key.word("blend", BLENDS)
            .otherwise(Blend.NORMAL, Blend.NORMAL.word())
            .comment("\"screen\"", "how it mixes with what is below (W3C Compositing and Blending)");

    private static final Key<Boolean> HIDDEN =
            Key.flag("hidden").otherwise(false, "false").comment("true", "stays in the file and is not drawn");

    /** A layer. */
    static final Section SECTION = section();

    private LayerKeys() {}

    private static Section section() {
        List<Key<?>> keys = new ArrayList<>();
        keys.add(Key.own("zone", "name of a zone or a plain colour strip")
                .of("zone")
                .without("the whole strip")
                .comment("\"bed\"", "where it is"));
        keys.addAll(PaintKeys.KEYS);
        keys.addAll(ExtentKeys.KEYS);
        keys.addAll(FollowKeys.keys("", "paint = \"scale\", extent = \"bar\" or \"pointer\""));
        keys.addAll(MotionKeys.KEYS);
        keys.add(RHYTHM);
        keys.add(EDGE);
        keys.add(PHASE);
        keys.add(OPACITY);
        keys.add(FollowKeys.keys("opacity_").get(0));
        keys.addAll(FollowKeys.keys("opacity_", "opacity_by").subList(1, 3));
        keys.add(DARK_BELOW);
        keys.add(FULL_ABOVE);
        keys.add(BLEND);
        keys.add(HIDDEN);
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
        Rhythm rhythm = rhythm(table);
        Level opacity = opacity(table);
        Blend blend = table.get(BLEND);
        table.noteUseless();
        return new LayerSpec(zone, paint, extent, rhythm, opacity, blend);
    }

    /** Whether a layer is not drawn. */
    static boolean isHidden(Table table) {
        return table.get(HIDDEN);
    }

    private static Level opacity(Table table) {
        double fixed = table.get(OPACITY);
        if (!table.has("opacity_by")) {
            return Level.fixed(fixed);
        }
        if (table.has("opacity")) {
            table.mistake(
                    "opacity_by",
                    new MistakeText("not_both", "cannot be used together with opacity", "keep one of the two")
                            .with("other", "opacity"));
        }
        return table.has(DARK_BELOW.name()) || table.has(FULL_ABOVE.name())
                ? cut(table)
                : Level.by(FollowKeys.read(table, "opacity_"));
    }

    /** With thresholds. Unless something else says what applies between them, two make a ramp and one a step. */
    private static Level cut(Table table) {
        Optional<Double> dark = table.find(DARK_BELOW);
        Optional<Double> full = table.find(FULL_ABOVE);
        if (dark.isPresent() && full.isPresent() && dark.get() > full.get()) {
            table.mistake(
                    FULL_ABOVE.name(),
                    new MistakeText(
                                    "below_dark",
                                    "is " + Wording.number(full.get()) + ", below dark_below = "
                                            + Wording.number(dark.get()),
                                    "give more")
                            .with("value", full.get())
                            .with("dark", dark.get()));
        }
        if (table.has("opacity_from") || table.has("opacity_to")) {
            Follow follow = FollowKeys.read(table, "opacity_");
            return Level.between(follow, dark.orElse(Double.NEGATIVE_INFINITY), full.orElse(Double.POSITIVE_INFINITY));
        }
        double from = dark.or(() -> full).orElse(0.0);
        double to = full.or(() -> dark).orElse(1.0);
        Signal signal = FollowKeys.signal(table, "opacity_");
        return Level.between(new Follow(signal, from, to), from, to);
    }

    private static Rhythm rhythm(String text) {
        Optional<String> meant =
                text.matches("(?i)(on|off)\\b.*[0-9].*") ? Optional.empty() : EverydayWords.value("rhythm", text);
        meant.ifPresent(advice -> {
            throw new IllegalArgumentException("\"" + text + "\" is not a valid rhythm; " + advice);
        });
        return Rhythm.parse(text);
    }

    private static Rhythm rhythm(Table table) {
        Rhythm rhythm = table.get(RHYTHM);
        if (rhythm.equals(Rhythm.FIXED)) {
            return rhythm;
        }
        Rhythm begun = rhythm.withPhase(table.get(PHASE));
        return rhythm.flashes() && table.has(EDGE.name()) ? edged(table, begun) : begun;
    }

    private static Rhythm edged(Table table, Rhythm rhythm) {
        Optional<Double> edge = table.find(EDGE);
        double longest = Math.floor(1000 * rhythm.longestEdge() + NOISE) / 1000;
        if (edge.isPresent() && edge.get() > longest) {
            String most = Wording.number(longest);
            table.mistake(
                    EDGE.name(),
                    new MistakeText(
                                    "edge_too_long",
                                    "is " + Wording.number(edge.get()) + ", longer than the " + most
                                            + " s that it is lit or dark at least",
                                    "give at most " + most + ", or write \"swell 4s\"")
                            .with("value", edge.get())
                            .with("high", longest));
            return rhythm;
        }
        return edge.map(rhythm::withEdge).orElse(rhythm);
    }
}
