package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the vocabulary says of keys, compared with what the reader of the file accepts. */
class KeyNoteTest {
    /** Layers that have all that their paint and extent need; others keys are added to them. */
    private static final Map<String, String> PAINTS = Map.of(
            "solid", "paint = \"solid\", colour = \"red\"",
            "ramp", "paint = \"ramp\", colours = [\"red\", \"blue\"]",
            "scale", "paint = \"scale\", colours = [\"red\", \"blue\"], by = \"bed.heat\"",
            "palette", "paint = \"palette\", colours = [\"red\", \"blue\"], extent = \"grains\"",
            "ember", "paint = \"ember\"");

    private static List<String> mistakes(String... layers) {
        String text = """
                [broker]
                url = "mqtt://127.0.0.1"
                [printer.state]
                topic = "shop/alder/job"
                printing = ["RUN"]
                [controller]
                port = "memory"
                [supply]
                ceiling_mA = 1000
                [strip]
                pixels = 40
                [looks.mine]
                layers = [%s]
                """.formatted(
                        Stream.of(layers).map(layer -> "{ " + layer + " }").collect(Collectors.joining(", ")));
        try {
            ConfigFile.read(text, "alder.toml");
            return List.of();
        } catch (ConfigException e) {
            return e.mistakes().stream().map(Mistake::sentence).toList();
        }
    }

    private static boolean applies(KeyNote note, String paint, String extent) {
        return note.when().isEmpty()
                || note.when().getOrDefault("paint", List.of()).contains(paint)
                || note.when().getOrDefault("extent", List.of()).contains(extent);
    }

    private static String value(KeyNote note) {
        return switch (note.kind()) {
            case "number", "whole" ->
                note.low().isPresent() && note.low().getAsDouble() > 0.5
                        ? Integer.toString((int) Math.ceil(note.low().getAsDouble()))
                        : "0.5";
            case "flag" -> "true";
            default ->
                "\"" + (note.choices().isEmpty() ? "oklab" : note.choices().get(0)) + "\"";
        };
    }

    /** With every paint and extent, a key that is said not to apply is refused as that, and one that is said to apply is not. */
    @Test
    void aKeyAppliesWhereItIsSaidTo() {
        Set<String> asked = Set.of("paint", "extent", "colour", "colours", "stops", "by", "from", "to", "zone", "seed");
        int refused = 0;
        for (KeyNote note : KeyNote.ofLayer()) {
            boolean byShape = note.when().keySet().stream().allMatch(Set.of("paint", "extent")::contains);
            if (asked.contains(note.name()) || !byShape || note.kind().equals("rhythm")) {
                continue;
            }
            List<String> paints = List.copyOf(PAINTS.keySet());
            String[] layers = paints.stream()
                    .map(paint -> PAINTS.get(paint) + ", " + note.name() + " = " + value(note))
                    .toArray(String[]::new);
            List<String> mistakes = mistakes(layers);
            for (int i = 0; i < layers.length; i++) {
                String extent = paints.get(i).equals("palette") ? "grains" : "all";
                String useless = "looks.mine.layers." + i + "." + note.name() + ": does not apply here";
                boolean refuses = mistakes.stream().anyMatch(words -> words.startsWith(useless));
                assertEquals(!applies(note, paints.get(i), extent), refuses, layers[i] + ": " + mistakes);
                refused += refuses ? 1 : 0;
            }
        }
        assertTrue(refused > 30, "it says where keys do not apply");
    }

    @Test
    void boundsAndDefaultsAreThoseThatTheFileIsReadWith() {
        Map<String, KeyNote> keys = KeyNote.ofLayer().stream().collect(Collectors.toMap(KeyNote::name, note -> note));
        KeyNote spread = keys.get("spread");
        assertEquals(100, spread.high().getAsDouble());
        assertEquals(1.0, spread.usual().get());
        assertEquals(
                List.of("spread: is 101; give a number from 0 to 100"),
                trimmed(mistakes("paint = \"ramp\", colours = [\"red\", \"blue\"], spread = 101")));
        assertEquals("solid", keys.get("paint").usual().get());
        assertEquals("F", keys.get("rhythm").usual().get());
        assertEquals(Map.of("rhythm", List.of()), keys.get("edge_s").when());
        assertEquals(
                Map.of("paint", List.of("scale"), "extent", List.of("bar", "pointer")),
                keys.get("by").when());
        assertEquals("flag", keys.get("hidden").kind());
        assertEquals("state", KeyNote.ofCue().get(1).kind());
    }

    private static List<String> trimmed(List<String> mistakes) {
        return mistakes.stream()
                .map(one -> one.replaceFirst("^looks.mine.layers.0.", ""))
                .toList();
    }

    @Test
    void aHiddenLayerIsReadAndNotDrawn() throws ConfigException {
        assertEquals(List.of(), mistakes("colour = \"red\", hidden = true"));
        assertTrue(mistakes("colour = \"rde\", hidden = true").get(0).contains("colour"), "it has to be right");
    }
}
