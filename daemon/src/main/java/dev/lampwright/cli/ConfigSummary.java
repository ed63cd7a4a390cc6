package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.PrinterLight;
import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What {@code check} says about a configuration, as a line for people and as values for {@link Json}. */
final class ConfigSummary {
    private ConfigSummary() {}

    /**
     * How a configuration is understood.
     *
     * @param examined the configuration
     * @return a few words on each part, on one line
     */
    static String line(Examined examined) {
        Config config = examined.config();
        List<String> parts = new ArrayList<>();
        parts.add("listens at " + config.broker().url() + " to "
                + String.join(", ", config.bindings().topicFilters()));
        addIfAny(
                parts,
                "views",
                views(config).entrySet().stream()
                        .map(one -> one.getKey() + ' ' + one.getValue())
                        .toList());
        addIfAny(parts, "own heaters", ownHeaters(config));
        addIfAny(parts, "own readings", ownReadings(config));
        parts.add(controller(config));
        parts.add("zones " + joined(zones(config)));
        addIfAny(parts, "dimmers", config.fitting().dimmerNames());
        parts.add(config.looks().size() + " looks, " + config.cues().size() + " cues");
        parts.addAll(KeptLooks.words(examined));
        if (!examined.defaults().isEmpty()) {
            parts.add("defaults " + joined(examined.defaults()));
        }
        return String.join("; ", parts);
    }

    /** The strip and its controller in a few words. */
    static String controller(Config config) {
        Setup setup = config.setup();
        return setup.pixels() + " pixels " + setup.order() + " at "
                + config.controller().port() + ", ceiling "
                + setup.ceilingsMilliamps().get(setup.stripSupply()) + " mA";
    }

    /**
     * How a configuration is understood.
     *
     * @param file its name
     * @param examined the configuration
     * @return the same as {@link #line}, by name
     */
    static Map<String, Object> map(String file, Examined examined) {
        Config config = examined.config();
        Setup setup = config.setup();
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("file", file);
        map.put("good", true);
        map.put("broker", config.broker().url().toString());
        map.put("topics", config.bindings().topicFilters());
        map.put("own_heaters", ownHeaters(config));
        map.put("own_readings", ownReadings(config));
        map.put("port", config.controller().port());
        map.put("pixels", setup.pixels());
        map.put("order", setup.order());
        map.put("ceiling_mA", setup.ceilingsMilliamps().get(setup.stripSupply()));
        map.put("zones", zones(config));
        map.put(
                "printers",
                config.light().printers().stream()
                        .map(PrinterLight::name)
                        .filter(name -> !name.isEmpty())
                        .toList());
        map.put("views", views(config));
        map.put("dimmers", config.fitting().dimmerNames());
        map.put("looks", List.copyOf(config.looks().keySet()));
        map.put("cues", config.cues().size());
        map.put("looks_from", looksFrom(examined));
        map.put("defaults", examined.defaults());
        return map;
    }

    /** The file that each look is in; those of none are built in. */
    private static Map<String, String> looksFrom(Examined examined) {
        Map<String, String> from = new LinkedHashMap<>();
        examined.keys(List.of("looks")).forEach(name -> from.put(name, examined.file(List.of("looks", name))));
        return from;
    }

    /** The parts of the strip that show one printer each. */
    private static Map<String, String> views(Config config) {
        Map<String, String> views = new LinkedHashMap<>();
        config.light()
                .views()
                .forEach(view -> views.put(view.name(), view.pixels().toString()));
        return views;
    }

    private static void addIfAny(List<String> parts, String what, Collection<String> names) {
        if (!names.isEmpty()) {
            parts.add(what + ' ' + String.join(", ", names));
        }
    }

    private static List<String> ownHeaters(Config config) {
        return config.bindings().heaters().stream().map(OwnHeater::name).toList();
    }

    private static List<String> ownReadings(Config config) {
        return config.bindings().own().keySet().stream()
                .filter(own -> own.like().isEmpty())
                .map(OwnQuantity::key)
                .toList();
    }

    /**
     * The mistakes in a configuration.
     *
     * @param file its name
     * @param wrong what is wrong
     * @return the mistakes, by name
     */
    static Map<String, Object> map(String file, ConfigException wrong) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("file", file);
        map.put("good", false);
        map.put("mistakes", wrong.mistakes().stream().map(ConfigSummary::map).toList());
        return map;
    }

    private static Map<String, Object> map(Mistake mistake) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("line", mistake.line());
        map.put("key", mistake.key());
        map.put("what", mistake.what());
        map.put("what_would_be_right", mistake.whatWouldBeRight());
        return map;
    }

    /** The zones of the strip; those of plain colour strips are beyond it. */
    private static Map<String, String> zones(Config config) {
        Map<String, String> zones = new LinkedHashMap<>();
        config.fitting().zones().forEach((name, zone) -> {
            if (zone.pixel(0) < config.setup().pixels()) {
                zones.put(name, zone.toString());
            }
        });
        return zones;
    }

    private static String joined(Map<String, String> values) {
        return values.entrySet().stream()
                .map(entry -> entry.getKey() + " " + entry.getValue())
                .collect(Collectors.joining(", "));
    }
}
