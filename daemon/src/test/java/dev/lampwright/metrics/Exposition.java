package dev.lampwright.metrics;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A reader of the Prometheus text format, written from its description at prometheus.io, "Exposition formats", text-based format 0.0.4; it
 * shares nothing with the library that writes it. Anything that deviates from the format is an error.
 */
final class Exposition {
    private static final String NAME = "[a-zA-Z_:][a-zA-Z0-9_:]*";
    private static final Pattern META = Pattern.compile("# (HELP|TYPE) (" + NAME + ") (.+)");
    private static final Pattern SAMPLE = Pattern.compile("(" + NAME + ")(?:\\{(.*)})? (\\S+)");
    private static final Pattern LABEL =
            Pattern.compile("([a-zA-Z_][a-zA-Z0-9_]*)=\"((?:[^\"\\\\\\n]|\\\\[\\\\\"n])*)\",?");
    private static final List<String> TYPES = List.of("counter", "gauge", "histogram", "summary", "untyped");

    private final Map<String, Family> families = new LinkedHashMap<>();

    /** All samples of one name. */
    static final class Family {
        private String help = "";
        private String type = "untyped";
        private final List<Sample> samples = new ArrayList<>();

        String help() {
            return help;
        }

        String type() {
            return type;
        }

        List<Sample> samples() {
            return samples;
        }
    }

    /** One line. */
    record Sample(String name, Map<String, String> labels, double value) {}

    private Exposition() {}

    /** Reads a text. */
    static Exposition parse(String text) {
        require(text.endsWith("\n"), "the last line does not end");
        Exposition exposition = new Exposition();
        text.lines().filter(line -> !line.isEmpty()).forEach(exposition::take);
        return exposition;
    }

    Map<String, Family> families() {
        return families;
    }

    /** The value of the only sample of a name that has these labels, in the order of the text. */
    double value(String name, Map<String, String> labels) {
        List<Sample> found = families.values().stream()
                .flatMap(family -> family.samples.stream())
                .filter(sample -> sample.name.equals(name) && sample.labels.equals(labels))
                .toList();
        require(found.size() == 1, found.size() + " samples of " + name + labels);
        return found.get(0).value;
    }

    private void take(String line) {
        if (line.startsWith("#")) {
            takeMeta(line);
            return;
        }
        Matcher matcher = SAMPLE.matcher(line);
        require(matcher.matches(), "no sample: " + line);
        Sample sample = new Sample(matcher.group(1), labels(matcher.group(2)), number(matcher.group(3)));
        Family family = families.get(familyOf(sample.name));
        require(family != null, "no TYPE before " + line);
        require(
                family.samples.stream()
                        .noneMatch(other -> other.name.equals(sample.name) && other.labels.equals(sample.labels)),
                "twice: " + line);
        family.samples.add(sample);
    }

    private void takeMeta(String line) {
        Matcher matcher = META.matcher(line);
        require(matcher.matches(), "no comment of a kind that is used here: " + line);
        Family family = families.computeIfAbsent(matcher.group(2), name -> new Family());
        require(family.samples.isEmpty(), "after its samples: " + line);
        if (matcher.group(1).equals("HELP")) {
            require(family.help.isEmpty(), "twice: " + line);
            family.help = matcher.group(3);
        } else {
            require(TYPES.contains(matcher.group(3)), "no such type: " + line);
            family.type = matcher.group(3);
        }
    }

    /** The samples of a histogram have their own suffixes. */
    private String familyOf(String name) {
        String base = name.replaceFirst("_(bucket|sum|count)$", "");
        boolean histogram =
                families.containsKey(base) && families.get(base).type.equals("histogram");
        return histogram ? base : name;
    }

    private static Map<String, String> labels(String text) {
        Map<String, String> labels = new LinkedHashMap<>();
        if (text == null) {
            return labels;
        }
        Matcher matcher = LABEL.matcher(text);
        int end = 0;
        while (matcher.find() && matcher.start() == end) {
            require(labels.put(matcher.group(1), matcher.group(2)) == null, "a label twice: " + text);
            end = matcher.end();
        }
        require(end == text.length(), "no labels: " + text);
        return labels;
    }

    private static double number(String text) {
        return switch (text) {
            case "+Inf" -> Double.POSITIVE_INFINITY;
            case "-Inf" -> Double.NEGATIVE_INFINITY;
            case "NaN" -> Double.NaN;
            default -> Double.parseDouble(text);
        };
    }

    private static void require(boolean right, String wrong) {
        if (!right) {
            throw new IllegalArgumentException(wrong);
        }
    }
}
