package dev.lampwright.payload;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A payload taken apart into its single values: the leaves of a JSON document by pointer; the parts of a text as {@link TextParts} finds
 * them.
 */
public final class Leaves {
    /** So many values of one payload are told at most. */
    public static final int MOST = 256;

    /** A payload longer than this, in bytes, is not taken apart. */
    public static final int MOST_BYTES = 1 << 16;

    /** Keys under which a list names its elements, in a few languages. Common practice, no source. */
    private static final Set<String> NAMING_KEYS =
            Set.of("name", "id", "label", "part", "kind", "type", "what", "which", "nom", "nombre", "teil", "nome");

    private static final int MOST_NAME_CHARS = 30;
    private static final int MOST_PATH_CHARS = 300;

    private final List<Leaf> leaves = new ArrayList<>();
    private boolean complete = true;

    private Leaves() {}

    /**
     * Takes a payload apart.
     *
     * @param payload any bytes; not kept
     * @return its values
     */
    public static Leaves of(byte[] payload) {
        Leaves all = new Leaves();
        if (payload.length > MOST_BYTES) {
            all.complete = false;
        } else {
            all.split(new Payload(payload));
        }
        return all;
    }

    /**
     * The values.
     *
     * @return at most {@link #MOST}
     */
    public List<Leaf> list() {
        return List.copyOf(leaves);
    }

    /**
     * Whether nothing was left out.
     *
     * @return false if the payload was too long, or had too many values, or one too deep
     */
    public boolean complete() {
        return complete;
    }

    private void split(Payload payload) {
        Optional<JsonNode> document = payload.json().filter(node -> node.isContainerNode() || node.isTextual());
        if (document.isPresent()) {
            walk(document.get(), JsonPointer.empty(), List.of());
        } else {
            addText(PayloadPath.BARE, List.of(), payload.text());
        }
    }

    private void walk(JsonNode node, JsonPointer at, List<String> names) {
        if (node.isObject()) {
            for (Map.Entry<String, JsonNode> property : node.properties()) {
                walk(property.getValue(), at.appendProperty(property.getKey()), with(names, property.getKey()));
            }
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                walk(node.get(i), at.appendIndex(i), with(named(names, node.get(i)), Integer.toString(i)));
            }
        } else if (node.isTextual()) {
            addText(PayloadPath.at(at), names, node.textValue());
        } else {
            add(plain(PayloadPath.at(at), names, node));
        }
    }

    private static Leaf plain(PayloadPath path, List<String> names, JsonNode node) {
        double number = node.isNumber() ? node.doubleValue() : Double.NaN;
        return new Leaf(path, List.of(), names, JsonTree.value(node), number, Unit.OWN);
    }

    private void addText(PayloadPath path, List<String> names, String text) {
        TextParts.of(path, names, text.strip()).forEach(this::add);
    }

    private void add(Leaf leaf) {
        if (leaves.size() < MOST && isNameable(leaf.path().toString())) {
            leaves.add(leaf);
        } else {
            complete = false;
        }
    }

    /** Whether a path is short, and whole Unicode text. */
    private static boolean isNameable(String path) {
        return path.length() <= MOST_PATH_CHARS
                && StandardCharsets.UTF_8.newEncoder().canEncode(path);
    }

    /** A list may name its elements: in an object under one of the naming keys, in a row by its first element. */
    private static List<String> named(List<String> names, JsonNode element) {
        if (element.isArray() && element.size() > 1 && isName(element.get(0))) {
            return with(names, element.get(0).textValue());
        }
        for (Map.Entry<String, JsonNode> property : element.properties()) {
            if (NAMING_KEYS.contains(property.getKey().toLowerCase(Locale.ROOT)) && isName(property.getValue())) {
                return with(names, property.getValue().textValue());
            }
        }
        return names;
    }

    private static boolean isName(JsonNode node) {
        return node.isTextual()
                && node.textValue().length() <= MOST_NAME_CHARS
                && node.textValue().chars().anyMatch(Character::isLetter);
    }

    private static List<String> with(List<String> names, String name) {
        List<String> more = new ArrayList<>(names);
        more.add(name);
        return more;
    }
}
