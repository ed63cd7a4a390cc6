package dev.lampwright.config;

import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.Statuses;
import dev.lampwright.signal.PrinterSignals;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The section {@code [printer]}, or {@code [printers]} with a table for each of several.
 *
 * @param byName the printers, in the order of the file; one without a name has an empty one
 * @param own the signals of their user-defined readings
 */
record PrintersSection(Map<String, PrinterSection> byName, List<Signal> own) {
    private static final int MOST = 32;
    private static final String NAME = "[A-Za-z][A-Za-z0-9_-]{0,39}";
    private static final Set<String> NO_PRINTERS = Set.of(PrinterSignals.ALL, "any", "all");

    static PrintersSection read(Table root) {
        Table several = root.table("printers");
        if (several.keys().isEmpty() && several.right()) {
            return of(root, Map.of(Statuses.UNNAMED, PrinterSection.read(root.table("printer"), "printer")));
        }
        if (root.has("printer")) {
            root.table("printer").leaveOut();
            root.mistake(
                    "printer",
                    "cannot be used together with printers",
                    "give that printer a name, too: [printers.NAME] with its keys below");
        }
        Map<String, PrinterSection> byName = new LinkedHashMap<>();
        for (String name : several.keys()) {
            noteIfUnfit(several, name);
            byName.put(name, PrinterSection.read(several.table(name), "printers." + name));
        }
        if (byName.size() > MOST) {
            several.mistake(
                    several.keys().get(MOST), "is one of more than " + MOST + " printers", "give each strip fewer");
        }
        if (byName.isEmpty()) {
            byName.put(Statuses.UNNAMED, PrinterSection.read(several, "printers"));
        }
        return of(root, byName);
    }

    private static void noteIfUnfit(Table several, String name) {
        if (!name.matches(NAME)) {
            several.mistake(
                    name,
                    "is not a name for a printer",
                    "begin with a letter, then letters, digits, - and _, 40 characters at most");
        } else if (isSignal(name)) {
            several.mistake(name, "is what the names of signals begin with", "choose another name");
        }
    }

    private static boolean isSignal(String name) {
        return NO_PRINTERS.contains(name)
                || Signal.all().stream().anyMatch(signal -> (signal.key() + '.').startsWith(name + '.'));
    }

    private static PrintersSection of(Table root, Map<String, PrinterSection> byName) {
        Map<String, OwnQuantity> all = new LinkedHashMap<>();
        byName.forEach((name, printer) -> {
            for (OwnQuantity quantity : printer.bindings().own().keySet()) {
                OwnQuantity before = all.putIfAbsent(quantity.key(), quantity);
                if (before != null && !before.equals(quantity)) {
                    noteOther(root.table("printers").table(name).table("readings"), quantity.key());
                }
                if (byName.containsKey(thing(quantity.key()))) {
                    root.table("printers")
                            .mistake(
                                    thing(quantity.key()),
                                    "is what the name of a reading begins with, " + quantity.key(),
                                    "choose another name for one of them");
                }
            }
        });
        PrintersSection printers = new PrintersSection(byName, Signal.ofOwn(all.values()));
        printers.own.forEach(root::know);
        if (!printers.names().isEmpty()) {
            PrinterLight.named(printers.lights(), printers.own).forEach(root::know);
        }
        return printers;
    }

    private static String thing(String key) {
        return key.contains(".") ? key.substring(0, key.indexOf('.')) : key;
    }

    private static void noteOther(Table readings, String key) {
        boolean dotted = key.contains(".");
        Table table = dotted ? readings.table(thing(key)) : readings;
        table.mistake(
                key.substring(dotted ? key.indexOf('.') + 1 : 0),
                "has another unit or range than the same reading of another printer",
                "give both the same, or choose another name");
    }

    /** What the light needs to know about each. */
    List<PrinterLight> lights() {
        List<PrinterLight> lights = new ArrayList<>();
        byName.forEach((name, printer) -> {
            Set<String> keys = new LinkedHashSet<>();
            Signal.ofOwn(printer.bindings().own().keySet()).forEach(signal -> keys.add(signal.key()));
            lights.add(new PrinterLight(
                    name,
                    printer.silentAfter(),
                    printer.room(),
                    own.stream().filter(signal -> keys.contains(signal.key())).toList()));
        });
        return lights;
    }

    /** Where each reports what. */
    Map<String, Bindings> bindings() {
        Map<String, Bindings> bindings = new LinkedHashMap<>();
        byName.forEach((name, printer) -> bindings.put(name, printer.bindings()));
        return bindings;
    }

    /** The names of the printers, in the order of the file; empty if the only one has no name. */
    List<String> names() {
        return byName.keySet().stream().filter(name -> !name.isEmpty()).toList();
    }

    /** The names of events of any of them. */
    Set<String> events() {
        Set<String> events = new LinkedHashSet<>();
        byName.values()
                .forEach(printer -> events.addAll(printer.bindings().events().keySet()));
        return events;
    }
}
