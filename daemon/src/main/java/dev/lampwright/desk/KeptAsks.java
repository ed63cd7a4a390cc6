package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.Json;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Asks as text, for another run to take up: JSON in one line, with times on the wall clock.
 *
 * <pre>{"format":"lampwright asks 1","asked":[{"ask":"work","name":"side","value":0.4,"until":"changed"}],"lit":[…]}</pre>
 *
 * <p>Under {@code lit} is the last level above 0 of each light, so that it can be switched on again.
 */
final class KeptAsks {
    private static final String FORMAT = "format";
    private static final String FORMAT_1 = "lampwright asks 1";
    private static final String ASKED = "asked";
    private static final String LIT = "lit";
    private static final String ASK = "ask";
    private static final String NAME = "name";
    private static final String VALUE = "value";
    private static final int MOST = 2 * PixelsAsk.MOST_PLACES;

    private KeptAsks() {}

    /** What counts, as text. */
    static String text(StandingWishes standing, Now now) {
        JsonArray asked = new JsonArray();
        standing.held()
                .forEach((aim, held) -> asked.add(entry(aim, held.setting()).put(Request.UNTIL, until(held, now))));
        JsonArray lit = new JsonArray();
        standing.lit().forEach((aim, share) -> lit.add(entry(aim, Setting.of(share))));
        return new JsonObject()
                .put(FORMAT, FORMAT_1)
                .put(ASKED, asked)
                .put(LIT, lit)
                .text();
    }

    private static JsonObject entry(Aim aim, Setting setting) {
        JsonObject entry = new JsonObject().put(ASK, aim.ask().word()).putIfAny(NAME, aim.name());
        setting.putInto(entry, VALUE);
        return entry;
    }

    private static String until(Held held, Now now) {
        return held.end().ends() ? held.end().wallTime(now).toString() : Request.CHANGED;
    }

    /**
     * Reads what {@link #text} wrote.
     *
     * @param text any text
     * @return what it says; does not check whether that is still possible
     * @throws IllegalArgumentException if it is something else; the message says why and is meant to follow the name of the file
     */
    static StandingWishes read(String text) {
        JsonNode node = Json.read(text).orElseThrow(() -> new IllegalArgumentException("is cut off, or is not JSON"));
        if (!node.path(FORMAT).asText().equals(FORMAT_1)) {
            throw new IllegalArgumentException("is not what this version of lampwright writes there");
        }
        Map<Aim, Held> held = new LinkedHashMap<>();
        for (JsonNode entry : array(node, ASKED)) {
            held.put(aim(entry), new Held(setting(entry), end(entry)));
        }
        Map<Aim, Double> lit = new LinkedHashMap<>();
        for (JsonNode entry : array(node, LIT)) {
            double share = setting(entry).share();
            if (!(share > 0 && share <= 1)) {
                throw damaged(entry);
            }
            lit.put(aim(entry), share);
        }
        return new StandingWishes(held, Map.of(), lit, Seen.NONE);
    }

    private static JsonNode array(JsonNode node, String key) {
        JsonNode array = node.path(key);
        if (!array.isArray() || array.size() > MOST) {
            throw new IllegalArgumentException("has no list of at most " + MOST + " under " + key);
        }
        return array;
    }

    private static Aim aim(JsonNode entry) {
        Ask ask = Ask.of(entry.path(ASK).asText())
                .filter(Ask.thatStay()::contains)
                .orElseThrow(() -> damaged(entry));
        return new Aim(ask, entry.path(NAME).asText());
    }

    private static Setting setting(JsonNode entry) {
        JsonNode value = entry.path(VALUE);
        if (value.isNumber() && Double.isFinite(value.asDouble())) {
            return Setting.of(value.asDouble());
        }
        if (value.isTextual()) {
            return Setting.of(value.asText());
        }
        throw damaged(entry);
    }

    private static End end(JsonNode entry) {
        String until = entry.path(Request.UNTIL).asText();
        if (until.equals(Request.CHANGED)) {
            return End.WHEN_CHANGED;
        }
        try {
            return End.at(Instant.parse(until));
        } catch (DateTimeException e) {
            throw damaged(entry);
        }
    }

    private static IllegalArgumentException damaged(JsonNode entry) {
        return new IllegalArgumentException("has " + Request.shown(entry) + " in it, which is not possible");
    }
}
