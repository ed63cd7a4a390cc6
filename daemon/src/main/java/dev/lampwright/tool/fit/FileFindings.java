package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import dev.lampwright.toml.TomlEditor;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a configuration already says about the lights: as findings, as lines for the user, and as dimmers that are in use. */
final class FileFindings {
    private static final Pattern RUN = Pattern.compile("\\s*(\\d+)\\s*(?:-\\s*(\\d+)\\s*)?");
    private static final double USUAL_VOLTS = 5;
    private static final double MICRO = 1000;

    private final TomlEditor file;
    private final FileKnowledge.InForce inForce;

    FileFindings(TomlEditor file, FileKnowledge.InForce inForce) {
        this.file = file;
        this.inForce = inForce;
    }

    /** The findings that the steps start from; the controller is not known before it has answered. */
    Findings findings() {
        Setup setup = inForce.setup();
        List<Findings.Milliamps> channels = setup.channelMicroamps().stream()
                .map(each -> new Findings.Milliamps(each / MICRO, 0))
                .toList();
        return Findings.NONE
                .withSupply(new Findings.Supply(
                        number("supply", "volts").orElse(USUAL_VOLTS),
                        false,
                        number("wiring", "supplies", "strip", "amps"),
                        number("wiring", "strip", "fuse_A"),
                        setup.ceilingsMilliamps().get(setup.stripSupply())))
                .withOrder(setup.order())
                .withStrip(new Findings.Strip(setup.pixels(), false, setup.runs()))
                .withCurrents(new Findings.Currents(channels, new Findings.Milliamps(setup.darkMicroamps() / MICRO, 0)))
                .withZones(zones())
                .withBrightness(number("desk", "brightness").orElse(1));
    }

    /** Zones that are a run from one pixel to another; zones that are joined, mirrored or every second pixel stay as written. */
    private Map<String, Findings.Run> zones() {
        Map<String, Findings.Run> zones = new LinkedHashMap<>();
        table("zones").forEach((name, value) -> {
            Matcher run = RUN.matcher(value.toString());
            if (value instanceof String && run.matches()) {
                int first = Integer.parseInt(run.group(1));
                zones.put(name, new Findings.Run(first, run.group(2) == null ? first : Integer.parseInt(run.group(2))));
            }
        });
        return zones;
    }

    /** The names of all lights on dimmers. */
    List<String> dimmerNames() {
        return List.copyOf(table("dimmers").keySet());
    }

    /** The dimmers with a light. */
    Set<Integer> dimmersInUse() {
        Set<Integer> used = new TreeSet<>();
        table("dimmers").values().forEach(light -> {
            if (light instanceof Map<?, ?> keys && !Boolean.TRUE.equals(keys.get("unused"))) {
                add(used, keys.get("channel"));
                add(used, keys.get("channels"));
            }
        });
        return used;
    }

    private static void add(Set<Integer> used, Object channels) {
        if (channels instanceof Number number) {
            used.add(number.intValue());
        } else if (channels instanceof List<?> several) {
            several.forEach(each -> add(used, each));
        }
    }

    /** The words of each state that has some, whichever place reports it. */
    Map<String, List<String>> stateWords() {
        Map<String, List<String>> words = new LinkedHashMap<>();
        Object state = file.get(List.of("printer", "state")).orElse(Map.of());
        List<?> places = state instanceof List<?> several ? several : List.of(state);
        for (Object place : places) {
            ((Map<?, ?>) place).forEach((name, value) -> {
                if (value instanceof List<?> list) {
                    list.forEach(word -> words.computeIfAbsent(name.toString(), any -> new ArrayList<>())
                            .add(word.toString()));
                }
            });
        }
        return words;
    }

    /** What the file has, in a few lines. */
    List<Phrase> lines() {
        Setup setup = inForce.setup();
        List<Phrase> lines = new ArrayList<>();
        lines.add(has(Phrase.of("file_controller", "controller"), inForce.port()));
        double volts = number("supply", "volts").orElse(USUAL_VOLTS);
        int ceiling = setup.ceilingsMilliamps().get(setup.stripSupply());
        lines.add(Phrase.of(
                "file_supply",
                line("supply", TypedNumbers.shown(volts) + " V, ceiling " + ceiling + " mA"),
                "volts",
                volts,
                "ceiling",
                ceiling));
        lines.add(Phrase.of(
                "file_strip",
                line("strip", setup.pixels() + " pixels, " + setup.order()),
                "pixels",
                setup.pixels(),
                "order",
                setup.order()));
        lines.add(has(Phrase.of("file_zones", "zones"), joined(table("zones"))));
        lines.add(dimmersInUse().isEmpty() ? Phrase.of("file_no_dimmers", line("dimmers", "none")) : dimmers());
        double brightness = number("desk", "brightness").orElse(1);
        lines.add(
                Phrase.of("file_brightness", line("brightness", TypedNumbers.shown(brightness)), "share", brightness));
        lines.add(has(Phrase.of("file_broker", "broker"), inForce.broker().getOrDefault("url", "")));
        lines.add(has(Phrase.of("file_printer", "printer"), printer()));
        if (!inForce.faults()) {
            lines.add(Phrase.of(
                    "file_no_fault",
                    line("faults", "none is bound, so no fault will ever be shown: listen to the printer again")));
        }
        return lines;
    }

    private static String line(String what, String words) {
        return String.format("    %-11s %s", what, words.isEmpty() ? "default" : words);
    }

    /** What the file says of something, as it says it. */
    private static Phrase has(Phrase what, String words) {
        return Phrase.of(
                words.isEmpty() ? "file_has_usual" : "file_has",
                line(what.english(), words),
                "what",
                what,
                "words",
                words);
    }

    private Phrase dimmers() {
        String names = String.join(", ", dimmerNames());
        String used = dimmersInUse().toString();
        return Phrase.of("file_dimmers", line("dimmers", names + " on " + used), "names", names, "dimmers", used);
    }

    private String printer() {
        List<String> parts = new ArrayList<>();
        if (file.get(List.of("printer", "state")).isPresent()) {
            parts.add("its state");
        }
        if (file.get(List.of("printer", "condition")).isPresent()) {
            parts.add("conditions");
        }
        table("printer", "readings").forEach((name, value) -> {
            boolean parent =
                    value instanceof Map<?, ?> inner && inner.values().stream().allMatch(Map.class::isInstance);
            if (parent) {
                ((Map<?, ?>) value).keySet().forEach(inner -> parts.add(name + "." + inner));
            } else {
                parts.add(name);
            }
        });
        return String.join(", ", parts);
    }

    private static String joined(Map<String, Object> table) {
        List<String> parts = new ArrayList<>();
        table.forEach((name, value) -> parts.add(name + " " + value));
        return String.join(", ", parts);
    }

    private OptionalDouble number(String... path) {
        return file.get(List.of(path))
                .filter(Number.class::isInstance)
                .map(each -> OptionalDouble.of(((Number) each).doubleValue()))
                .orElse(OptionalDouble.empty());
    }

    private Map<String, Object> table(String... path) {
        Optional<Object> there = file.get(List.of(path));
        Map<String, Object> table = new LinkedHashMap<>();
        if (there.isPresent() && there.get() instanceof Map<?, ?> keys) {
            keys.forEach((key, value) -> table.put(key.toString(), value));
        }
        return table;
    }
}
