package dev.lampwright.payload;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Chooses a part of a JSON document by what stands in its fields: one element of a list, wherever in the list it is, or the whole document, if it is
 * about the wanted thing.
 *
 * @param among where the list is; a document, or a part of one, that is no list is chosen or not chosen as a whole
 * @param where what has to stand at which places of the part, as the word that a binding would name
 */
public record Selection(PayloadPath among, Map<PayloadPath, String> where) {
    /** Keeps a copy of the map, in its order. */
    public Selection {
        where = Collections.unmodifiableMap(new LinkedHashMap<>(where));
    }

    /**
     * The chosen part.
     *
     * @param document the whole document
     * @return the first that fits; a missing node if none does
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
