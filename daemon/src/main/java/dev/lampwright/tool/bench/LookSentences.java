package dev.lampwright.tool.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Layers in a few words each, as somebody would tell what to look for. */
final class LookSentences {
    private static final String BY = "by";

    private LookSentences() {}

    /** A sentence for each layer of a look, the lowest first. */
    static List<String> of(BenchLook look) {
        return look.layers().stream().map(LookSentences::layer).toList();
    }

    private static String layer(Map<?, ?> layer) {
        List<String> parts = new ArrayList<>();
        parts.add(paint(layer) + " " + place(layer));
        if (layer.containsKey(BY)) {
            parts.add("follows " + layer.get(BY));
        }
        if (layer.containsKey("cycle_s")
                || layer.containsKey("speed_px_per_s")
                || layer.containsKey("speed_zones_per_s")) {
            parts.add(Boolean.TRUE.equals(layer.get("back_and_forth")) ? "moves to and fro" : "moves");
        }
        if (layer.containsKey("rhythm")) {
            parts.add("rhythm " + layer.get("rhythm"));
        }
        opacity(layer, parts);
        if (Boolean.TRUE.equals(layer.get("hidden"))) {
            parts.add("hidden");
        }
        return String.join(", ", parts);
    }

    private static void opacity(Map<?, ?> layer, List<String> parts) {
        if (layer.containsKey("opacity_by")) {
            parts.add("as strong as " + layer.get("opacity_by"));
        } else if (layer.get("opacity") instanceof Number share) {
            parts.add(Math.round(100 * share.doubleValue()) + " %");
        }
    }

    private static String paint(Map<?, ?> layer) {
        return switch (word(layer, "paint", "solid")) {
            case "solid" -> word(layer, "colour", "no colour");
            case "ember" -> "embers";
            case "scale" -> "scale of " + colours(layer);
            case "palette" -> "any of " + colours(layer);
            default -> colours(layer);
        };
    }

    private static String colours(Map<?, ?> layer) {
        return layer.get("colours") instanceof List<?> colours
                ? colours.stream().map(String::valueOf).collect(Collectors.joining(" to "))
                : "no colours";
    }

    private static String place(Map<?, ?> layer) {
        String zone = word(layer, "zone", "strip");
        String where = zone.equals("strip") ? "the whole strip" : zone;
        return switch (word(layer, "extent", "all")) {
            case "bar" -> "as a bar on " + where;
            case "pointer" -> "as a pointer on " + where;
            case "band" -> "as a band on " + where;
            case "grains" -> "in grains on " + where;
            default -> "on " + where;
        };
    }

    private static String word(Map<?, ?> layer, String key, String otherwise) {
        return layer.get(key) instanceof String word ? word : otherwise;
    }
}
