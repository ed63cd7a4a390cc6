package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.KeyNote;
import dev.lampwright.config.PrinterLight;
import dev.lampwright.config.Swatches;
import dev.lampwright.config.ViewSpec;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.desk.Report;
import dev.lampwright.json.Json;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** All that a look or a cue of one daemon can be made of: its keys, from the table that reads the file, and what they may name. */
final class BenchVocabulary {
    private BenchVocabulary() {}

    /**
     * Tells it.
     *
     * @param config whose lights and printers
     * @param report where the values of signals are
     * @return an object of JSON
     */
    static Map<String, Object> of(Config config, Report report) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("keys", keys());
        all.put("paints", choices("paint"));
        all.put("extents", choices("extent"));
        all.put("blends", choices("blend"));
        all.put("easings", choicesOf(KeyNote.ofCue(), "easing"));
        all.put("rhythms", rhythms());
        all.put("zones", zones(config.fitting()));
        all.put("dimmers", dimmers(config.fitting()));
        all.put("signals", signals(config, report));
        all.put(
                "states",
                Stream.of(PrinterState.values()).map(PrinterState::word).toList());
        all.put("alarms", Stream.of(AlarmState.values()).map(AlarmState::word).toList());
        all.put("events", List.copyOf(config.bindings().events().keySet()));
        all.put("printers", printers(config));
        all.put("views", config.light().views().stream().map(ViewSpec::name).toList());
        all.put("swatches", swatches());
        all.put("limits", limits());
        all.put("version", version(all));
        return all;
    }

    /** Changes whenever the lights do, so that a page knows when to ask again. The present values of signals do not count. */
    private static String version(Map<String, Object> all) {
        Map<String, Object> lights = new LinkedHashMap<>(all);
        lights.put(
                "signals",
                ((List<?>) all.get("signals"))
                        .stream()
                                .map(signal -> String.valueOf(((Map<?, ?>) signal).get("name")))
                                .toList());
        return BenchLook.version(Json.of(lights));
    }

    private static Map<String, Object> keys() {
        Map<String, Object> keys = new LinkedHashMap<>();
        keys.put("layer", told(KeyNote.ofLayer()));
        keys.put("look", told(KeyNote.ofLook()));
        keys.put("level", told(KeyNote.ofLevel()));
        keys.put("cue", told(KeyNote.ofCue()));
        return keys;
    }

    private static List<Map<String, Object>> told(List<KeyNote> notes) {
        return notes.stream().map(BenchVocabulary::told).toList();
    }

    private static Map<String, Object> told(KeyNote note) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("name", note.name());
        told.put("kind", note.kind());
        put(told, "low", note.low());
        put(told, "high", note.high());
        note.usual().ifPresent(usual -> told.put("usual", usual));
        putIfAny(told, "choices", note.choices());
        told.put("type", note.type());
        told.put("without", note.without());
        told.put("with", note.with());
        Map<String, Object> when = new LinkedHashMap<>();
        note.when().forEach((key, values) -> when.put(key, values.isEmpty() ? (Object) true : values));
        if (!when.isEmpty()) {
            told.put("when", when);
        }
        told.put("help", note.help());
        return told;
    }

    private static void put(Map<String, Object> told, String key, OptionalDouble number) {
        if (number.isPresent()) {
            told.put(key, number.getAsDouble());
        }
    }

    private static void putIfAny(Map<String, Object> told, String key, List<String> words) {
        if (!words.isEmpty()) {
            told.put(key, words);
        }
    }

    private static List<String> choices(String key) {
        return choicesOf(KeyNote.ofLayer(), key);
    }

    private static List<String> choicesOf(List<KeyNote> notes, String key) {
        return note(notes, key).choices();
    }

    private static KeyNote note(List<KeyNote> notes, String key) {
        return notes.stream()
                .filter(each -> each.name().equals(key))
                .findFirst()
                .orElseThrow();
    }

    /** Those that the reference has for examples. */
    private static List<String> rhythms() {
        String help = note(KeyNote.ofLayer(), "rhythm").help();
        return List.of(help.substring(help.indexOf(": ") + 2).split(", ", -1));
    }

    private static List<Map<String, Object>> zones(Fitting fitting) {
        List<Map<String, Object>> zones = new ArrayList<>();
        for (Map.Entry<String, Zone> entry : fitting.zones().entrySet()) {
            Zone zone = entry.getValue();
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", entry.getKey());
            one.put("pixels", zone.length());
            one.put("colour_strip", zone.pixelCount() > 0 && zone.pixel(0) >= fitting.pixels());
            zones.add(one);
        }
        return zones;
    }

    private static List<Map<String, Object>> dimmers(Fitting fitting) {
        return fitting.dimmers().stream()
                .filter(Fitting.DimmerUse::isWhite)
                .map(use -> Map.<String, Object>of("name", use.name()))
                .toList();
    }

    private static List<Map<String, Object>> signals(Config config, Report report) {
        List<Map<String, Object>> signals = new ArrayList<>();
        for (Signal signal : PlayedPrinter.all(config.light())) {
            double now = report.signals().getOrDefault(signal.key(), Double.NaN);
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", signal.key());
            one.put("share", signal.isShare());
            if (signal.isShare()) {
                one.put("low", signal.low());
                one.put("high", signal.high());
            }
            one.put("now", Double.isFinite(now) ? now : null);
            signals.add(one);
        }
        return signals;
    }

    private static List<String> printers(Config config) {
        return config.light().printers().stream()
                .map(PrinterLight::name)
                .filter(name -> !name.isEmpty())
                .toList();
    }

    private static List<Map<String, Object>> swatches() {
        return Swatches.names().stream()
                .map(Swatches::named)
                .map(swatch -> {
                    Map<String, Object> one = new LinkedHashMap<>();
                    one.put("name", swatch.name());
                    one.put("use", swatch.use());
                    one.put("sentence", swatch.sentence());
                    return one;
                })
                .toList();
    }

    private static Map<String, Object> limits() {
        Map<String, Object> limits = new LinkedHashMap<>();
        limits.put("name", BenchLook.NAME_FORM);
        limits.put("layers", BenchLook.MOST_LAYERS);
        limits.put("most_bytes", LookBench.MOST_BYTES);
        limits.put("seconds", LookFilm.Cut.LONGEST_S);
        limits.put("rate", LookFilm.Cut.MOST_RATE);
        limits.put("from_s", LookFilm.Cut.LATEST_S);
        return limits;
    }
}
