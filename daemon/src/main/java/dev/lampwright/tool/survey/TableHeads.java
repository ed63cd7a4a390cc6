package dev.lampwright.tool.survey;

import dev.lampwright.payload.CsvField;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Lines of names, which say what the fields of the lines of numbers are, on the same topic or one beside it. */
final class TableHeads {
    private static final int MOST = 16;
    private static final int MOST_BYTES = 2000;
    private static final int LEAST_FIELDS = 4;
    private static final List<Character> SEPARATORS = List.of(';', '\t', '|', ',');
    private static final Pattern NAME = Pattern.compile("\\p{L}[\\p{L}\\p{M}\\p{N} _.°%/()\\[\\]-]{0,39}");

    private final Map<String, Head> heads = new LinkedHashMap<>();

    /** The names on a topic. */
    private record Head(char separator, List<String> names) {}

    /**
     * Takes in a message.
     *
     * @param topic its topic
     * @param payload its payload; only names are kept
     */
    void hear(String topic, byte[] payload) {
        if (payload.length <= MOST_BYTES && (heads.size() < MOST || heads.containsKey(topic))) {
            String text = new String(payload, StandardCharsets.UTF_8).strip();
            head(text).ifPresent(head -> heads.put(topic, head));
        }
    }

    private static Optional<Head> head(String text) {
        return SEPARATORS.stream()
                .filter(separator -> text.indexOf(separator) > 0)
                .findFirst()
                .map(separator -> new Head(
                        separator,
                        Arrays.stream(text.split(Pattern.quote(String.valueOf(separator)), -1))
                                .map(String::strip)
                                .toList()))
                .filter(TableHeads::isOfNames);
    }

    private static boolean isOfNames(Head head) {
        return head.names.size() >= LEAST_FIELDS
                && new HashSet<>(head.names).size() == head.names.size()
                && head.names.stream().allMatch(name -> NAME.matcher(name).matches());
    }

    /**
     * What a value is called.
     *
     * @param trail what was seen of it
     * @param fields how many fields the lines on its topic have
     * @return empty if it is not a field, or if not exactly one line of names fits
     */
    Optional<ValueName> nameOf(Trail trail, int fields) {
        String topic = trail.source().topicFilter();
        if (trail.source().cuts().size() != 1 || !(trail.source().cuts().get(0) instanceof CsvField field)) {
            return Optional.empty();
        }
        List<Head> fitting = heads.entrySet().stream()
                .filter(entry -> isNear(entry.getKey(), topic))
                .map(Map.Entry::getValue)
                .filter(head -> head.separator == field.separator() && head.names.size() == fields)
                .distinct()
                .toList();
        return fitting.size() == 1
                ? Optional.of(ValueName.of(topic, List.of(fitting.get(0).names.get(field.number() - 1))))
                : Optional.empty();
    }

    private static boolean isNear(String one, String other) {
        return one.equals(other)
                || (one.contains("/") && outer(one).equals(outer(other)))
                || one.startsWith(other + "/")
                || other.startsWith(one + "/");
    }

    private static String outer(String topic) {
        return topic.substring(0, topic.lastIndexOf('/') + 1);
    }
}
