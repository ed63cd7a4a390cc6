package dev.lampwright.payload;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Selects a part of a JSON document by the values of its fields: one element of a list, whatever its index, or the whole document if it has
 * those values.
 *
 * @param among where the list is; anything other than a list is selected as a whole or not at all
 * @param where the fields of the part to check, each with its required value, written like a word in a binding
 */
public record Selection(PayloadPath among, Map<PayloadPath, String> where) {
    /** Keeps a copy of the map, in its order. */
    public Selection {
        where = Collections.unmodifiableMap(new LinkedHashMap<>(where));
    }

    /**
     * The selected part.
     *
     * @param document the whole document
     * @return the first match; a missing node if there is none
     */
    JsonNode in(JsonNode document) {
        JsonNode all = among.in(document);
        if (!all.isArray()) {
            return fits(all) ? all : MissingNode.getInstance();
        }
        for (JsonNode element : all) {
            if (fits(element)) {
                return element;
            }
        }
        return MissingNode.getInstance();
    }

    private boolean fits(JsonNode part) {
        return where.entrySet().stream().allMatch(entry -> {
            JsonNode field = entry.getKey().in(part);
            return !field.isMissingNode()
                    && JsonTree.value(field)
                            .word()
                            .filter(entry.getValue()::equals)
                            .isPresent();
        });
    }

    @Override
    public String toString() {
        String fields = where.entrySet().stream()
                .map(entry -> entry.getKey() + " is " + entry.getValue())
                .collect(Collectors.joining(" and "));
        return (among.pointer().isEmpty() ? "" : "in " + among + " ") + "where " + fields;
    }
}
