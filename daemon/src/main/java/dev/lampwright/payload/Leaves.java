package dev.lampwright.payload;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A payload split into its single values: the leaves of a JSON document by pointer; the parts of a text as found by {@link TextParts}. */
public final class Leaves {
    /** The maximum number of values from one payload. */
    public static final int MOST = 256;

    /** A payload longer than this, in bytes, is not split. */
    public static final int MOST_BYTES = 1 << 16;

    private static final int MOST_NAME_CHARS = 30;
    private static final int MOST_PATH_CHARS = 300;

    private final List<Leaf> leaves = new ArrayList<>();
    private boolean complete = true;

    private final String topic;
    private final RecordKeys keys;
    private final Speakers speakers;

    private Leaves(String topic, RecordKeys keys, Speakers speakers) {
        this.topic = topic;
        this.keys = keys;
        this.speakers = speakers;
    }

    /**
     * Splits a payload, knowing no others.
     *
     * @param payload any bytes; not kept
     * @return its values
     */
    public static Leaves of(byte[] payload) {
        return of("", payload, new RecordKeys(), new Speakers());
    }

    /**
     * Splits a payload.
     *
     * @param topic its topic
     * @param payload any bytes; not kept
     * @param keys what is known about lists in earlier payloads, by which their elements are distinguished
     * @param speakers what is known about who publishes on which topic
     * @return its values
     */
    public static Leaves of(String topic, byte[] payload, RecordKeys keys, Speakers speakers) {
        Leaves all = new Leaves(topic, keys, speakers);
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
     * @return false if the payload was too long, or had too many values, or too deeply nested ones
     */
    public boolean complete() {
        return complete;
    }

    private void split(Payload payload) {
        Optional<JsonNode> document = payload.json().filter(node -> node.isContainerNode() || node.isTextual());
        if (document.isEmpty()) {
            addText(PayloadPath.BARE, Optional.empty(), List.of(), payload.text());
            return;
        }
        JsonNode all = document.get();
        Optional<String> speaker =
                speakers.of(topic, all).filter(field -> all.path(field).isValueNode());
        Optional<Selection> part = speaker.map(field -> selection(JsonPointer.empty(), field, all));
        List<String> names =
                speaker.map(field -> List.of(all.get(field).asText())).orElse(List.of());
        walk(all, JsonPointer.empty(), part, names);
    }

    private static Selection selection(JsonPointer among, String field, JsonNode record) {
        JsonPointer key = record.isArray()
                ? JsonPointer.empty().appendIndex(0)
                : JsonPointer.empty().appendProperty(field);
        return new Selection(
                PayloadPath.at(among),
                Map.of(
                        PayloadPath.at(key),
                        JsonTree.value(record.at(key)).word().orElse("")));
    }

    private void walk(JsonNode node, JsonPointer at, Optional<Selection> part, List<String> names) {
        if (node.isObject()) {
            for (Map.Entry<String, JsonNode> property : node.properties()) {
                walk(property.getValue(), at.appendProperty(property.getKey()), part, with(names, property.getKey()));
            }
        } else if (node.isArray()) {
            walkList(node, at, part, names);
        } else if (node.isTextual()) {
            addText(PayloadPath.at(at), part, names, node.textValue());
        } else {
            add(plain(PayloadPath.at(at), part, names, node));
        }
    }

    /** Parts within a selected part are not selected again. */
    private void walkList(JsonNode list, JsonPointer at, Optional<Selection> part, List<String> names) {
        Optional<String> key = part.isPresent() ? Optional.empty() : keys.of(topic + ' ' + at, list);
        for (int i = 0; i < list.size(); i++) {
            JsonNode element = list.get(i);
            if (key.isPresent()) {
                Selection chosen = selection(at, key.get(), element);
                String name = chosen.where().values().iterator().next();
                walk(element, JsonPointer.empty(), Optional.of(chosen), with(names, name));
            } else {
                walk(element, at.appendIndex(i), part, with(named(names, element), Integer.toString(i)));
            }
        }
    }

    private static Leaf plain(PayloadPath path, Optional<Selection> part, List<String> names, JsonNode node) {
        double number = node.isNumber() ? node.doubleValue() : Double.NaN;
        return new Leaf(path, List.of(), part, names, JsonTree.value(node), number, Unit.OWN);
    }

    private void addText(PayloadPath path, Optional<Selection> part, List<String> names, String text) {
        TextParts.of(path, part, names, text.strip()).forEach(this::add);
    }

    private void add(Leaf leaf) {
        if (leaves.size() < MOST && isNameable(leaf.on("").place())) {
            leaves.add(leaf);
        } else {
            complete = false;
        }
    }

    /** Whether a path is short, and valid Unicode text. */
    private static boolean isNameable(String path) {
        return path.length() <= MOST_PATH_CHARS
                && StandardCharsets.UTF_8.newEncoder().canEncode(path);
    }

    /** A list may name its elements: an object by one of the naming keys, a row by its first element. */
    private static List<String> named(List<String> names, JsonNode element) {
        if (element.isArray() && element.size() > 1 && isName(element.get(0))) {
            return with(names, element.get(0).textValue());
        }
        for (Map.Entry<String, JsonNode> property : element.properties()) {
            if (RecordKeys.NAMING.contains(property.getKey().toLowerCase(Locale.ROOT)) && isName(property.getValue())) {
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
