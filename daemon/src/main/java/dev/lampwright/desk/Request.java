package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.TextNode;
import dev.lampwright.json.Json;
import dev.lampwright.upkeep.Printable;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * The content of an ask: a JSON object, or a bare value, which stands for the object's main key. Every key must be read, or the request is
 * refused as a whole.
 */
final class Request {
    /** The maximum length of a message; every valid ask is far shorter. */
    static final int MOST_CHARS = 65_536;

    private static final String ID = "id";
    /** The asker's name. */
    static final String BY = "by";

    /** How long something lasts. */
    static final String FOR = "for_s";
    /** Until when it lasts. */
    static final String UNTIL = "until";
    /** How long the light takes to change. */
    static final String FADE = "fade_s";
    /** Until somebody asks for something else. */
    static final String CHANGED = "changed";

    static final double SHORTEST_S = 0.1;
    static final double LONGEST_S = Duration.ofDays(7).toSeconds();
    static final int LONGEST_FADE_S = 600;

    private static final int LONGEST_ID = 64;
    private static final int LONGEST_NAME = 40;
    private static final int SHOWN_CHARS = 40;

    private final Map<String, JsonNode> values = new LinkedHashMap<>();
    private final TreeSet<String> known = new TreeSet<>();
    private final Optional<String> id;
    private final String by;
    private final Optional<End> end;

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
        by = name();
        end = Optional.empty();
    }

    private Request(String key, JsonNode value, Optional<End> end) {
        values.put(key, value);
        id = Optional.empty();
        by = "";
        this.end = end;
    }

    private String name() {
        JsonNode node = values.get(BY);
        if (node == null || !node.isTextual()) {
            return "";
        }
        values.remove(BY);
        return Printable.beginning(node.asText().strip(), LONGEST_NAME);
    }

    /**
     * Repeats an ask that was in effect.
     *
     * @param aim its target
     * @param held the ask that was in effect
     */
    static Request again(Aim aim, Held held) {
        JsonNode value = held.setting().node();
        String word = aim.ask().word();
        JsonNode whole = aim.name().isEmpty() ? value : Json.object(aim.name(), value);
        return new Request(word, whole, Optional.of(held.end()));
    }

    /** A part of this request, with the same manner. */
    Request part(String word, JsonNode value) {
        Request part = new Request(word, value, end);
        for (String key : List.of(FOR, UNTIL, FADE)) {
            if (values.containsKey(key)) {
                part.values.put(key, values.get(key));
            }
        }
        return part;
    }

    private static JsonNode node(String text) {
        if (text.isEmpty()) {
            return MissingNode.getInstance();
        }
        return Json.read(text).orElseGet(() -> TextNode.valueOf(text));
    }

    /** The request's id. */
    Optional<String> id() {
        return id;
    }

    /** The asker's name; empty if it gives none. */
    String by() {
        return by;
    }

    private OptionalDouble number(String key, double least, double most) throws RefusedException {
        JsonNode node = take(key);
        if (node == null) {
            return OptionalDouble.empty();
        }
        double number = node.isNumber() ? node.asDouble() : Double.NaN;
        if (!(number >= least && number <= most)) {
            throw new RefusedException(
                    Reason.NOT_VALID,
                    key,
                    shown(node),
                    "give a number from %s to %s".formatted(plain(least), plain(most)));
        }
        return OptionalDouble.of(number);
    }

    /** A required level. */
    WantedLevel needLevel(String key, String wanted) throws RefusedException {
        JsonNode node = take(key);
        if (node == null) {
            throw new RefusedException(Reason.MISSING, key, wanted);
        }
        return WantedLevel.of(node).orElseThrow(() -> new RefusedException(Reason.NOT_VALID, key, shown(node), wanted));
    }

    /** A word; empty if left out, or if it is a number. */
    Optional<String> word(String key) {
        JsonNode node = values.get(key);
        known.add(key);
        if (node == null || !node.isTextual()) {
            return Optional.empty();
        }
        values.remove(key);
        return Optional.of(node.asText());
    }

    /** A required word. */
    String needWord(String key, String wanted) throws RefusedException {
        Optional<String> word = word(key);
        if (word.isEmpty()) {
            throw values.containsKey(key)
                    ? new RefusedException(Reason.NOT_VALID, key, shown(values.get(key)), wanted)
                    : new RefusedException(Reason.MISSING, key, wanted);
        }
        return word.get();
    }

    /**
     * How long something lasts, and how it fades.
     *
     * @param usual how long if the request does not say; empty for until changed
     * @param now from when on
     */
    Manner manner(Optional<Duration> usual, Now now) throws RefusedException {
        OptionalDouble seconds = number(FOR, SHORTEST_S, LONGEST_S);
        boolean untilChanged = untilChanged();
        if (untilChanged && seconds.isPresent()) {
            throw new RefusedException(Reason.EXCLUSIVE, FOR, UNTIL);
        }
        double fade = number(FADE, 0, LONGEST_FADE_S).orElse(Double.NaN);
        if (end.isPresent()) {
            return new Manner(end.get(), fade, "");
        }
        if (untilChanged) {
            return new Manner(End.WHEN_CHANGED, fade, " until changed");
        }
        Optional<Duration> time =
                seconds.isPresent() ? Optional.of(Duration.ofMillis(Math.round(seconds.getAsDouble() * 1000))) : usual;
        return time.map(span -> new Manner(End.after(span, now), fade, " for " + Spoken.seconds(span)))
                .orElse(new Manner(End.WHEN_CHANGED, fade, ""));
    }

    private boolean untilChanged() throws RefusedException {
        JsonNode node = take(UNTIL);
        if (node != null && !node.asText().equals(CHANGED)) {
            throw new RefusedException(
                    Reason.NOT_VALID, UNTIL, shown(node), "give \"" + CHANGED + "\", or " + FOR + " with seconds");
        }
        return node != null;
    }

    /** The values by name: the entries of an object, in their order; empty if the value is not an object. */
    Map<String, JsonNode> entries(String key) {
        JsonNode node = values.get(key);
        known.add(key);
        Map<String, JsonNode> entries = new LinkedHashMap<>();
        if (node != null && node.isObject()) {
            values.remove(key);
            node.properties().forEach(entry -> entries.put(entry.getKey(), entry.getValue()));
        }
        return entries;
    }

    /** Whether there are values by name. */
    boolean hasEntries(String key) {
        return values.containsKey(key) && values.get(key).isObject();
    }

    /** Whether a key exists and has not been read. */
    boolean has(String key) {
        return values.containsKey(key);
    }

    /** Refuses unknown keys. Call this once everything has been read. */
    void requireNothingLeft() throws RefusedException {
        if (values.containsKey(ID)) {
            throw new RefusedException(
                    Reason.NOT_VALID, ID, shown(values.get(ID)), "give text or a number, or leave it out");
        }
        if (values.containsKey(BY)) {
            throw new RefusedException(Reason.NOT_VALID, BY, shown(values.get(BY)), "give a name, or leave it out");
        }
        if (!values.isEmpty()) {
            String key = values.keySet().iterator().next();
            throw known.contains(key)
                    ? new RefusedException(
                            Reason.NOT_VALID, key, shown(values.get(key)), "give a word, or leave it out")
                    : new RefusedException(Reason.UNKNOWN_KEY, shown(key), "give only " + String.join(", ", known));
        }
    }

    private JsonNode take(String key) {
        known.add(key);
        return values.remove(key);
    }

    /** The value of a key, for a refusal. */
    String shownValue(String key) {
        return shown(values.get(key));
    }

    static String shown(JsonNode node) {
        return shown(node.toString());
    }

    /** Text from outside, cut short enough for the remedy to fit on the same line. */
    static String shown(String text) {
        return text.length() <= SHOWN_CHARS ? text : Printable.beginning(text, SHOWN_CHARS) + "...";
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
