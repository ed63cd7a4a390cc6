package dev.lampwright.config;

import dev.lampwright.look.Zone;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** The section {@code [views]}, with a table for each part of the strip that shows one of several printers. */
final class ViewsSection {
    private static final String WANTED_LIGHTS = "give the names of dimmers in an array, for instance [\"work\"]";

    /** A view. */
    static final Section SECTION = Section.of(
            "views.NAME",
            "a part of the strip that shows one of `printers`, with every look as on a strip of its own",
            Key.own("pixels", "as in `zones`, not mirrored").needed().example("\"0-29\"", "its pixels on the strip"),
            Key.own("printer", "name of one of `printers`")
                    .without("the printer of the view's name")
                    .example("\"alder\"", "the printer that it shows"),
            Key.own("lights", "names of dimmers in an array")
                    .without("a lamp is as bright as the view that has it brightest")
                    .example("[\"work\"]", "lamps and plain colour strips that show this printer alone"),
            Key.own("zones", "table: as `zones`, by pixels of the strip")
                    .without("`bed` and `nozzle` are halves of the view, `job` is all of it")
                    .example("{ bed = \"0-9\" }", "its zones"));

    private final List<String> printers;
    private final int pixels;
    private final DimmersSection dimmers;

    /**
     * Prepares to read views.
     *
     * @param printers names of the printers; empty if the only one has no name
     * @param pixels pixels of the strip
     * @param dimmers the dimmers
     */
    ViewsSection(List<String> printers, int pixels, DimmersSection dimmers) {
        this.printers = printers;
        this.pixels = pixels;
        this.dimmers = dimmers;
    }

    /**
     * Reads the section.
     *
     * @param root the file
     * @param zones zones of the whole strip
     * @return the views; an equal share for each printer if the file has none, and no views if there is one printer without a name
     */
    List<ViewSpec> read(Table root, Map<String, Zone> zones) {
        Table table = root.table("views");
        if (printers.isEmpty()) {
            noteNoPrinters(root, table);
            return List.of();
        }
        List<ViewSpec> views = table.keys().isEmpty()
                ? shares(root)
                : table.keys().stream().map(name -> view(name, table)).toList();
        views = views.size() == 1 ? List.of(withUsual(root, views.get(0), zones)) : views;
        if (root.right()) {
            noteShared(table, views);
            noteLights(root, table, views);
            noteWithoutView(root, views);
            noteNames(root, table, views);
        }
        return views;
    }

    private static void noteNoPrinters(Table root, Table table) {
        if (!table.keys().isEmpty()) {
            table.leaveOut();
            root.mistake("views", "does not apply here", "name the printers: [printers.NAME] in place of [printer]");
        }
    }

    /** A single view has the halves that the file gives the whole strip. */
    private ViewSpec withUsual(Table root, ViewSpec view, Map<String, Zone> zones) {
        Map<String, Zone> all = new LinkedHashMap<>(view.zones());
        ZonesSection.usual(pixels).keySet().stream()
                .filter(root.table("zones")::has)
                .forEach(name -> all.putIfAbsent(name, zones.get(name)));
        return new ViewSpec(view.name(), view.printer(), view.pixels(), all, view.lights());
    }

    /** The strip divided evenly; the remainder goes to the first printers. */
    private List<ViewSpec> shares(Table root) {
        int each = pixels / printers.size();
        if (each == 0) {
            root.mistake(
                    "printers",
                    "are " + printers.size() + ", more than the strip has pixels",
                    "name fewer, or correct strip.pixels");
            return List.of();
        }
        List<ViewSpec> views = new ArrayList<>();
        int first = 0;
        for (int i = 0; i < printers.size(); i++) {
            int last = first + each + (i < pixels % printers.size() ? 1 : 0) - 1;
            String name = printers.get(i);
            Zone run = Zone.run(first, last).named(name);
            root.table("views").table(name).defaultOf("pixels", run, run.toString());
            views.add(new ViewSpec(name, i, run, Map.of(), printers.size() == 1 ? lights() : Set.of()));
            first = last + 1;
        }
        return List.copyOf(views);
    }

    private Set<String> lights() {
        return Set.copyOf(lightNames());
    }

    private List<String> lightNames() {
        return dimmers.entries().stream()
                .filter(entry -> !entry.unused())
                .map(DimmerEntry::name)
                .distinct()
                .toList();
    }

    private ViewSpec view(String name, Table views) {
        Table table = views.table(name).as(SECTION);
        if (!table.has("pixels")) {
            table.mistake("pixels", "is missing", "give the view's pixels on the strip, for instance \"0-29\"");
        }
        Zone run = ZonesSection.zone(table, "pixels", pixels).orElse(Zone.run(0, pixels - 1));
        if (run.length() < run.pixelCount()) {
            table.mistake("pixels", "is mirrored, which a view cannot be", "mirror the zones of the view instead");
        }
        Map<String, Integer> known = new LinkedHashMap<>();
        printers.forEach(printer -> known.put(printer, known.size()));
        return new ViewSpec(
                name, printer(table, name, views, known), run.named(name), zones(table, run), lights(table));
    }

    private static int printer(Table table, String name, Table views, Map<String, Integer> known) {
        if (table.has("printer")) {
            return table.named("printer", "printer", known).orElse(0);
        }
        if (!known.containsKey(name)) {
            String right = Nearest.to(name, known.keySet())
                    .map(near -> "did you mean " + near + "? Or give printer = ")
                    .orElse("give printer = ");
            views.mistake(
                    name, "is not the name of a printer", right + '"' + String.join("\" or \"", known.keySet()) + '"');
        }
        return known.getOrDefault(name, 0);
    }

    private Map<String, Zone> zones(Table view, Zone run) {
        Table table = view.table("zones");
        Set<Integer> inside = new HashSet<>(pixelsOf(run));
        Map<String, Zone> zones = new LinkedHashMap<>();
        for (String name : table.keys()) {
            Optional<Zone> zone = ZonesSection.zone(table, name, pixels);
            zone.ifPresent(found -> zones.put(name, found.named(name)));
            zone.stream()
                    .flatMap(found -> pixelsOf(found).stream())
                    .filter(pixel -> !inside.contains(pixel))
                    .findFirst()
                    .ifPresent(pixel -> table.mistake(
                            name,
                            "has pixel " + pixel + ", which is not in the view",
                            "stay within " + run + "; pixels are counted along the whole strip"));
            if (name.equals(ZonesSection.STRIP) || name.equals(DimmersSection.PLAIN)) {
                table.mistake(name, "is always the whole view, or its plain colour strips", "choose another name");
            }
        }
        return zones;
    }

    private static List<Integer> pixelsOf(Zone zone) {
        return IntStream.range(0, zone.pixelCount()).map(zone::pixel).boxed().toList();
    }

    private Set<String> lights(Table table) {
        if (!table.has("lights")) {
            return Set.of();
        }
        List<String> known = lightNames();
        for (String light : table.texts("lights", WANTED_LIGHTS)) {
            if (!known.contains(light)) {
                String all = known.isEmpty() ? "no dimmer is fitted; leave it out" : "give " + String.join(", ", known);
                String right = Nearest.to(light, known)
                        .map(near -> "did you mean \"" + near + "\"?")
                        .orElse(all);
                table.mistake("lights", "has " + Wording.quoted(light) + " in it, which is not a dimmer", right);
            }
        }
        Set<String> lights = new HashSet<>(table.texts("lights", WANTED_LIGHTS));
        lights.retainAll(known);
        return lights;
    }

    private void noteShared(Table table, List<ViewSpec> views) {
        String[] owners = new String[pixels];
        for (ViewSpec view : views) {
            for (int pixel : pixelsOf(view.pixels())) {
                if (owners[pixel] != null) {
                    table.table(view.name())
                            .mistake(
                                    "pixels",
                                    "has pixel " + pixel + ", which views." + owners[pixel] + " has already",
                                    "give each view pixels of its own");
                    break;
                }
            }
            pixelsOf(view.pixels()).forEach(pixel -> owners[pixel] = view.name());
        }
    }

    private void noteLights(Table root, Table table, List<ViewSpec> views) {
        Map<String, String> owners = new HashMap<>();
        for (ViewSpec view : views) {
            for (String light : view.lights()) {
                String other = owners.putIfAbsent(light, view.name());
                if (other != null) {
                    table.table(view.name())
                            .mistake(
                                    "lights",
                                    "has " + Wording.quoted(light) + ", which views." + other + " has already",
                                    "keep it in one of the two");
                }
            }
        }
        dimmers.colourStrips().stream()
                .filter(strip -> !owners.containsKey(strip))
                .forEach(strip -> root.table("dimmers")
                        .mistake(
                                strip,
                                "is a plain colour strip that no view has",
                                "name it in the lights of one, for instance views."
                                        + views.get(0).name() + ".lights = [\"" + strip + "\"]"));
    }

    private void noteWithoutView(Table root, List<ViewSpec> views) {
        for (int i = 0; i < printers.size(); i++) {
            int which = i;
            if (views.stream().noneMatch(view -> view.printer() == which)) {
                root.table("printers")
                        .mistake(
                                printers.get(i),
                                "has no view",
                                "add [views." + printers.get(i) + "] with its pixels, or remove the printer");
            }
        }
    }

    private void noteNames(Table root, Table table, List<ViewSpec> views) {
        Collection<String> strips = dimmers.colourStrips();
        for (ViewSpec view : views) {
            boolean always = view.name().equals(ZonesSection.STRIP)
                    || view.name().equals(DimmersSection.PLAIN)
                    || ZonesSection.usual(pixels).containsKey(view.name());
            if (always || strips.contains(view.name()) || root.table("zones").has(view.name())) {
                table.mistake(view.name(), "is the name of a zone", "choose another name for one of them");
            }
        }
        if (views.size() > 1) {
            ZonesSection.usual(pixels).keySet().stream()
                    .filter(root.table("zones")::has)
                    .forEach(name -> root.table("zones")
                            .mistake(
                                    name,
                                    "is one for all, but each view has its own",
                                    "move it to zones of a view: [views."
                                            + views.get(0).name() + ".zones]"));
        }
    }

    /**
     * All zones that a look may name, and whose light counts as one area.
     *
     * @param zones those of the whole strip
     * @param views the views
     * @return those, each view by its name, and the unions of zones of views
     */
    static Map<String, Zone> withZones(Map<String, Zone> zones, List<ViewSpec> views) {
        Map<String, Zone> all = new LinkedHashMap<>(zones);
        for (ViewSpec view : views) {
            all.putIfAbsent(view.name(), view.pixels());
        }
        for (ViewSpec view : views) {
            view.zones().forEach((name, zone) -> {
                if (!zones.containsKey(name)) {
                    all.merge(name, zone, (some, more) -> some.then(more).named(name));
                }
                String inView = view.name() + '.' + name;
                all.putIfAbsent(inView, zone.named(inView));
            });
        }
        return all;
    }
}
