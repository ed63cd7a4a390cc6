package dev.lampwright.config;

import dev.lampwright.printer.PayloadPath;
import dev.lampwright.printer.TopicFilter;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Where a value stands: the keys {@code topic} and {@code at}.
 *
 * @param topicFilter MQTT topic filter
 * @param path where in the payload
 */
record Place(String topicFilter, PayloadPath path) {
    private static final String WANTED_TOPIC = "give the MQTT topic, for instance \"shop/alder/heat\"";
    private static final String WANTED_PATH =
            "give a JSON Pointer (RFC 6901), for instance \"/plate/now\", or leave it out if the payload itself is the value";
    /** RFC 6901, section 3: after {@code ~} comes 0 or 1. */
    private static final Pattern BROKEN_ESCAPE = Pattern.compile("~(?![01])");

    static Place read(Table table) {
        return new Place(topic(table), path(table));
    }

    private static String topic(Table table) {
        String topic = table.needText("topic", WANTED_TOPIC).orElse("#");
        TopicFilter.problem(topic)
                .ifPresent(problem -> table.mistake(
                        "topic",
                        "is " + Shown.quoted(topic) + ", which is no MQTT topic filter: " + problem,
                        WANTED_TOPIC));
        return topic;
    }

    private static PayloadPath path(Table table) {
        Optional<String> pointer = table.textOrEmpty("at", WANTED_PATH);
        if (pointer.isEmpty()) {
            return PayloadPath.BARE;
        }
        String text = pointer.get();
        if (BROKEN_ESCAPE.matcher(text).find()) {
            table.mistake("at", "is " + Shown.quoted(text) + " with a lone ~", "write ~0 for ~ and ~1 for / in a name");
            return PayloadPath.BARE;
        }
        try {
            return PayloadPath.at(text);
        } catch (IllegalArgumentException e) {
            table.mistake("at", "is " + Shown.quoted(text) + ", which is no JSON Pointer", WANTED_PATH);
            return PayloadPath.BARE;
        }
    }
}
