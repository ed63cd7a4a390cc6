package dev.lampwright.config;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.LayerSpec;
import dev.lampwright.look.Level;
import dev.lampwright.look.LookSpec;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The section {@code [looks]}, with a table for each look. */
final class LooksSection {
    /** What built-in looks use if it is fitted. */
    private static final Set<String> OPTIONAL = Set.of("work", DimmersSection.PLAIN);

    /** A look. */
    static final Section SECTION = Section.of(
            "looks.NAME",
            "a look; one of the same name takes the place of a built-in look or of a swatch",
            Key.own("swatch", "name of a swatch")
                    .of("swatch")
                    .without("nothing")
                    .comment("\"sea-mist\"", "a ready-made look that `lampwright looks` lists; layers go on top of it"),
            Key.own("dimmers", "table: for each white light 0 to 1, or `{ by, from, to }`")
                    .of("table")
                    .example("{ work = 0.2 }", "0 to 1, or by a signal: { by = \"job.progress\" }"),
            Key.own("layers", "array of layers")
                    .of("list")
                    .example("[{ colour = \"midnightblue\" }]", "the lowest first"),
            Key.own("steady_for_camera", "`true` or `false`")
                    .of("flag")
                    .without("whether it lights a dimmer")
                    .comment("true", "keeps still while the event `camera` lasts"));

    /** A white light of a look that follows a signal. */
    static final Section LEVEL =
            new Section("looks.NAME.dimmers.NAME", "a white light that follows a signal", FollowKeys.keys(""));

    private final Fitting fitting;
    private final Set<String> optional;

    private LooksSection(Fitting fitting, Set<String> optional) {
        this.fitting = fitting;
        this.optional = optional;
    }

    /**
     * Prepares to read looks of a user's file.
     *
     * @param fitting what they are for
     * @return what reads them; every zone and dimmer that they name must exist
     */
    static LooksSection ofFile(Fitting fitting) {
        return new LooksSection(fitting, Set.of());
    }

    /**
     * Prepares to read looks that come with Lampwright.
     *
     * @param fitting what they are for
     * @return what reads them; parts for optional lights are left out if those are not fitted
     */
    static LooksSection ofLampwright(Fitting fitting) {
        return new LooksSection(fitting, OPTIONAL);
    }

    /**
     * Reads the section.
     *
     * @param table the section
     * @return the looks by name, in the order of the file
     */
    Map<String, LookSpec> read(Table table) {
        Map<String, LookSpec> looks = new LinkedHashMap<>();
        table.keys()
                .forEach(name -> looks.put(name, look(name, table.table(name).as(SECTION))));
        return looks;
    }

    private LookSpec look(String name, Table table) {
        Optional<LookSpec> swatch = swatch(table);
        Table lights = table.table("dimmers");
        List<Level> dimmers =
                swatch.isPresent() && lights.keys().isEmpty() ? swatch.get().dimmers() : dimmers(lights);
        List<LayerSpec> layers = new ArrayList<>(swatch.map(LookSpec::layers).orElse(List.of()));
        for (Table layer : table.tables("layers")) {
            readLayer(layer.as(LayerKeys.SECTION)).ifPresent(layers::add);
        }
        boolean dark = lights.keys().isEmpty() && table.tables("layers").isEmpty();
        if (table.right() && dark && swatch.isEmpty()) {
            table.mistake(
                    "layers",
                    new MistakeText(
                            "no_light",
                            "is missing or empty, and so is dimmers",
                            "give the look light, or leave it out"));
        }
        boolean lit = swatch.map(LookSpec::steadyForCamera).orElse(false)
                || lights.keys().stream().anyMatch(key -> fitting.dimmerNames().contains(key));
        return new LookSpec(
                name, layers, dimmers, table.flag("steady_for_camera").orElse(lit));
    }

    /** One that is hidden has to be right all the same. */
    private Optional<LayerSpec> readLayer(Table layer) {
        if (!isFitted(layer)) {
            layer.leaveOut();
            return Optional.empty();
        }
        LayerSpec read = LayerKeys.read(layer, fitting.zones());
        return LayerKeys.isHidden(layer) ? Optional.empty() : Optional.of(read);
    }

    private Optional<LookSpec> swatch(Table table) {
        String all = "give a name that `lampwright looks` lists";
        return table.name("swatch", "swatch", Swatches.names(), all).flatMap(name -> Swatches.look(name, fitting));
    }

    private boolean isFitted(Table layer) {
        return layer.text("zone", "give the name of a zone")
                .filter(optional::contains)
                .map(fitting.zones()::containsKey)
                .orElse(true);
    }

    private List<Level> dimmers(Table table) {
        Map<String, Level> levels = new LinkedHashMap<>();
        table.keys().forEach(name -> levels.put(name, level(table, name)));
        return fitting.dimmers().stream()
                .map(use -> levels.getOrDefault(use.name(), Level.fixed(0)))
                .toList();
    }

    private Level level(Table table, String name) {
        noteIfNoDimmer(table, name);
        if (!table.isTable(name)) {
            return Level.fixed(table.numberIfThere(name, 0, 1).orElse(0));
        }
        return Level.by(FollowKeys.read(table.table(name).as(LEVEL), ""));
    }

    private void noteIfNoDimmer(Table table, String name) {
        List<String> white = fitting.dimmers().stream()
                .filter(Fitting.DimmerUse::isWhite)
                .map(Fitting.DimmerUse::name)
                .toList();
        if (white.contains(name) || optional.contains(name)) {
            return;
        }
        if (fitting.dimmerNames().contains(name)) {
            table.mistake(
                    name,
                    new MistakeText(
                                    "colour_strip",
                                    "is a plain colour strip",
                                    "light it by a layer: zone = \"" + name + '"')
                            .with("zone", name));
        } else {
            String all = white.isEmpty() ? "none is fitted; leave it out" : "give one of " + String.join(", ", white);
            String right = Nearest.to(name, white)
                    .map(near -> "did you mean " + near + "?")
                    .orElse(all);
            table.mistake(name, new MistakeText("no_dimmer", "is not a dimmer", right).with("dimmer", name));
        }
    }
}
