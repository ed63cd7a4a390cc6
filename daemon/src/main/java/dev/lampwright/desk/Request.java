package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.TextNode;
import dev.lampwright.json.Json;
import dev.lampwright.upkeep.Printable;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * What a message asks with: a JSON object, or a bare value, which stands for the object's main key. Every key must be asked for, or the
 * request is refused as a whole.
 */
final class Request {
    /** No message is longer; all that can be asked for is far shorter. */
    static final int MOST_CHARS = 65_536;

    private static final String ID = "id";
    /** How long something is to last. */
    static final String FOR = "for_s";

    private static final int LONGEST_ID = 64;
    private static final double LONGEST_S = Duration.ofDays(7).toSeconds();
    private static final int SHOWN_CHARS = 40;

    private final Map<String, JsonNode> values = new LinkedHashMap<>();
    private final TreeSet<String> known = new TreeSet<>();
    private final Optional<String> id;

    /**
     * Reads a message.
     *
     * @param payload JSON, or a bare word or number
     * @param mainKey what a bare value stands for
     */
    Request(String payload, String mainKey) {
        JsonNode node = node(payload.strip());
        if (node.isObject()) {
            node.properties().forEach(entry -> values.put(entry.getKey(), entry.getValue()));
        } else if (!node.isMissingNode()) {
            values.put(mainKey, node);
        }
        Optional<JsonNode> named = Optional.ofNullable(values.get(ID))
                .filter(JsonNode::isValueNode)
                .filter(given -> !given.isNull());
        named.ifPresent(given -> values.remove(ID));
        id = named.map(JsonNode::asText).map(text -> text.substring(0, Math.min(LONGEST_ID, text.length())));
    }

    private static JsonNode node(String text) {
        if (text.isEmpty()) {
            return MissingNode.getInstance();
        }
        return Json.read(text).orElseGet(() -> TextNode.valueOf(text));
    }

    /** What the request calls itself. */
    Optional<String> id() {
        return id;
    }

    /** A number; empty if it is left out. */
    OptionalDouble number(String key, double least, double most) throws RefusedException {
        JsonNode node = take(key);
        if (node == null) {
            return OptionalDouble.empty();
        }
        double number = node.isNumber() ? node.asDouble() : Double.NaN;
        if (!(number >= least && number <= most)) {
            throw new RefusedException(
                    "%s is %s; give a number from %s to %s".formatted(key, shown(node), plain(least), plain(most)));
        }
        return OptionalDouble.of(number);
    }

    /** A word; empty if it is left out, or is a number. */
    Optional<String> word(String key) {
        JsonNode node = values.get(key);
        known.add(key);
        if (node == null || !node.isTextual()) {
            return Optional.empty();
        }
        values.remove(key);
        return Optional.of(node.asText());
    }

    /** A word that must be there. */
    String needWord(String key, String wanted) throws RefusedException {
        Optional<String> word = word(key);
        if (word.isEmpty()) {
            String what = values.containsKey(key) ? key + " is " + shown(values.get(key)) : key + " is missing";
            throw new RefusedException(what + "; " + wanted);
        }
        return word.get();
    }

    /** How long something is to last. */
    Duration lasting(Duration usual) throws RefusedException {
        OptionalDouble seconds = number(FOR, 0, LONGEST_S);
        return seconds.isPresent() ? Duration.ofMillis(Math.round(seconds.getAsDouble() * 1000)) : usual;
    }

    /** How long something is to last, if the request says so. */
    Optional<Duration> lastingIfSaid() throws RefusedException {
        return values.containsKey(FOR) ? Optional.of(lasting(Duration.ZERO)) : Optional.empty();
    }

    /** Words by word: an object's entries, in their order; empty if it is left out. */
    Map<String, String> words(String key) throws RefusedException {
        JsonNode node = take(key);
        Map<String, String> words = new LinkedHashMap<>();
        if (node == null) {
            return words;
        }
        if (!node.isObject()) {
            throw new RefusedException("%s is %s; give an object of places and colours".formatted(key, shown(node)));
        }
        for (Map.Entry<String, JsonNode> entry : node.properties()) {
            if (!entry.getValue().isTextual()) {
                throw new RefusedException("%s %s is %s; give a colour, for instance \"orange\""
                        .formatted(key, shown(entry.getKey()), shown(entry.getValue())));
            }
            words.put(entry.getKey(), entry.getValue().asText());
        }
        return words;
    }

    /** Refuses what nobody has asked for. To be called once all is read. */
    void requireNothingLeft() throws RefusedException {
        if (values.containsKey(ID)) {
            throw new RefusedException("id is " + shown(values.get(ID)) + "; give text or a number, or leave it out");
        }
        if (!values.isEmpty()) {
            String key = values.keySet().iterator().next();
            throw new RefusedException(
                    known.contains(key)
                            ? key + " is " + shown(values.get(key)) + "; give a word, or leave it out"
                            : shown(key) + " is not known; give only " + String.join(", ", known));
        }
    }

    private JsonNode take(String key) {
        known.add(key);
        return values.remove(key);
    }

    private static String shown(JsonNode node) {
        return shown(node.toString());
    }

    /** What somebody else wrote, cut so short that what would be right still fits on the line after it. */
    static String shown(String text) {
        return text.length() <= SHOWN_CHARS ? text : Printable.beginning(text, SHOWN_CHARS) + "...";
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
