package dev.lampwright.payload;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which field distinguishes the elements of a list: one that has a different value in each, and the same values in message after message.
 * So an element is found again even if the list comes in a different order. Remembers a bounded number of lists.
 */
public final class RecordKeys {
    /** Names of fields that name things, in a few languages. Common practice, no source. */
    static final Set<String> NAMING =
            Set.of("name", "id", "label", "part", "kind", "type", "what", "which", "nom", "nombre", "teil", "nome");

    private static final int MOST_LISTS = 64;
    private static final int MOST_ELEMENTS = 16;
    private static final int MOST_CHARS = 30;
    private static final int LARGEST_ORDINAL = 24;

    private final Map<String, Map<String, Set<String>>> candidates = new HashMap<>();

    /**
     * The field that distinguishes the elements of a list, judged by all messages up to this one.
     *
     * @param list the list's topic and place, which identify it here
     * @param elements the list
     * @return the field's name, or its position if the elements are lists; empty if there is none
     */
    Optional<String> of(String list, JsonNode elements) {
        if (elements.size() < 2 || elements.size() > MOST_ELEMENTS) {
            return Optional.empty();
        }
        if (candidates.containsKey(list)) {
            candidates.get(list).entrySet().removeIf(entry -> !isStill(entry.getKey(), entry.getValue(), elements));
        } else if (candidates.size() < MOST_LISTS) {
            candidates.put(list, first(elements));
        }
        return best(candidates.getOrDefault(list, Map.of()).keySet(), elements);
    }

    private static Map<String, Set<String>> first(JsonNode elements) {
        Map<String, Set<String>> fields = new LinkedHashMap<>();
        for (String field : names(elements.get(0))) {
            values(field, elements).ifPresent(values -> fields.put(field, values));
        }
        return fields;
    }

    private static List<String> names(JsonNode element) {
        List<String> names = new ArrayList<>();
        if (element.isObject()) {
            element.fieldNames().forEachRemaining(names::add);
        } else if (element.isArray() && element.size() > 1) {
            names.add("0");
        }
        return names;
    }

    /** The values of a field in all elements; empty if it is not in all of them, or two have the same value. */
    private static Optional<Set<String>> values(String field, JsonNode elements) {
        Set<String> values = new HashSet<>();
        for (JsonNode element : elements) {
            JsonNode value = field(field, element);
            boolean names = value != null && (isText(value) || value.isIntegralNumber());
            if (!names || !values.add(value.asText())) {
                return Optional.empty();
            }
        }
        return Optional.of(values);
    }

    /** Only text can name a row. */
    private static JsonNode field(String field, JsonNode element) {
        if (element.isArray()) {
            JsonNode first = element.get(0);
            return first != null && first.isTextual() ? first : null;
        }
        return element.get(field);
    }

    private static boolean isText(JsonNode value) {
        return value.isTextual()
                && !value.textValue().isBlank()
                && value.textValue().length() <= MOST_CHARS
                && value.textValue().chars().anyMatch(Character::isLetter);
    }

    private static boolean isStill(String field, Set<String> known, JsonNode elements) {
        return values(field, elements)
                .filter(values -> known.containsAll(values) || isMore(known, values))
                .isPresent();
    }

    /** More elements than before may bring more names. */
    private static boolean isMore(Set<String> known, Set<String> values) {
        return values.size() > known.size() && values.containsAll(known) && known.addAll(values);
    }

    private static Optional<String> best(Set<String> fields, JsonNode elements) {
        return fields.stream()
                .filter(field -> NAMING.contains(field.toLowerCase(Locale.ROOT)))
                .findFirst()
                .or(() -> fields.stream()
                        .filter(field -> isText(field(field, elements.get(0))))
                        .findFirst())
                .or(() -> fields.stream()
                        .filter(field -> areOrdinals(field, elements))
                        .findFirst());
    }

    /** A larger number under a name without meaning may be a heater's target, which stays the same for a whole job. */
    private static boolean areOrdinals(String field, JsonNode elements) {
        for (JsonNode element : elements) {
            JsonNode value = field(field, element);
            if (value == null || value.asInt(LARGEST_ORDINAL + 1) > LARGEST_ORDINAL) {
                return false;
            }
        }
        return true;
    }
}
