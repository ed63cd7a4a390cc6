package dev.lampwright.config;

import dev.lampwright.broker.TopicFilter;
import dev.lampwright.payload.CsvField;
import dev.lampwright.payload.Cut;
import dev.lampwright.payload.Excerpt;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Selection;
import dev.lampwright.payload.Source;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The keys that say where a value is reported: {@code topic}, {@code at}, {@code where} with {@code among}, {@code field} with {@code separator}, and
 * {@code pattern}.
 */
final class SourceKeys {
    private static final String WANTED_TOPIC = "give the MQTT topic, for instance \"shop/alder/heat\"";
    private static final String WANTED_PATH =
            "give a JSON Pointer (RFC 6901), for instance \"/plate/now\", or leave it out if the payload itself is the value";
    private static final String WANTED_SEPARATOR = "give the character between two fields, for instance \";\"";
    private static final String WANTED_PATTERN =
            "give a regular expression with a group named value, for instance 'T=(?<value>[0-9.]+)'";
    private static final String WANTED_WHERE =
            "give a field of the part you mean and its value, for instance where = { \"/name\" = \"plate\" }";
    private static final int MOST_FIELDS = 1000;

    /** RFC 6901, section 3: after {@code ~} comes 0 or 1. */
    private static final Pattern BROKEN_ESCAPE = Pattern.compile("~(?![01])");

    /** The keys of a place. */
    static final List<Key<?>> KEYS = List.of(
            Key.own("topic", "MQTT topic; `+` and `#` stand for any level")
                    .needed()
                    .example("\"shop/alder/heat\"", "where the messages are"),
            Key.own("at", "JSON Pointer, RFC 6901")
                    .without("the payload itself is the value")
                    .example(
                            "\"/plate/now\"",
                            "where in the payload, or in the part that `where` chooses, the value is"),
            Key.own("where", "table of JSON Pointers with the word, number, true or false to look for")
                    .without("the whole payload")
                    .comment(
                            "{ \"/name\" = \"plate\" }",
                            "reads only the element of a list, or only the messages, with these values"),
            Key.own("among", "JSON Pointer, RFC 6901")
                    .with("where")
                    .without("the payload itself is the list, or the part")
                    .comment("\"/heaters\"", "where the list is"),
            Key.own("field", "whole number, 1 to " + MOST_FIELDS)
                    .comment("3", "which field of a line with separators (CSV, RFC 4180)"),
            Key.own("separator", "one character")
                    .with("field")
                    .without("`,`")
                    .comment("\";\"", "what is between two fields"),
            Key.own("pattern", "regular expression with a group named `value`")
                    .comment("'T=(?<value>[0-9.]+)'", "takes a part of a text"));

    private SourceKeys() {}

    static Source read(Table table) {
        List<Cut> cuts = Stream.of(field(table), pattern(table))
                .flatMap(Optional::stream)
                .toList();
        String topic = topic(table);
        Optional<Selection> part = part(table);
        PayloadPath path = path(table, "at");
        if (part.isPresent() && path.bare() && table.right()) {
            table.mistake(
                    "at",
                    "is missing; where chooses a part of a JSON document, and at says where the value is in it",
                    WANTED_PATH);
        }
        return new Source(topic, path, cuts, part);
    }

    private static Optional<Selection> part(Table table) {
        if (!table.has("where")) {
            if (table.has("among")) {
                table.mistake("among", "is given without where", WANTED_WHERE);
            }
            return Optional.empty();
        }
        Table where = table.table("where");
        Map<PayloadPath, String> fields = new LinkedHashMap<>();
        for (String key : where.keys()) {
            where.word(key, WANTED_WHERE)
                    .ifPresent(word -> pointer(where, key, key).ifPresent(pointer -> fields.put(pointer, word)));
        }
        if (fields.isEmpty() && where.right()) {
            table.mistake("where", "is empty", WANTED_WHERE);
        }
        return Optional.of(new Selection(table.has("among") ? path(table, "among") : PayloadPath.at(""), fields));
    }

    private static String topic(Table table) {
        String topic = table.needText("topic", WANTED_TOPIC).orElse("#");
        TopicFilter.problem(topic)
                .ifPresent(problem -> table.mistake(
                        "topic",
                        "is " + Wording.quoted(topic) + ", which is not an MQTT topic filter: " + problem,
                        WANTED_TOPIC));
        return topic;
    }

    private static PayloadPath path(Table table, String key) {
        return table.textOrEmpty(key, WANTED_PATH)
                .flatMap(text -> pointer(table, key, text))
                .orElse(PayloadPath.BARE);
    }

    private static Optional<PayloadPath> pointer(Table table, String key, String text) {
        if (BROKEN_ESCAPE.matcher(text).find()) {
            table.mistake(
                    key, "is " + Wording.quoted(text) + " with a lone ~", "write ~0 for ~ and ~1 for / in a name");
            return Optional.empty();
        }
        try {
            return Optional.of(PayloadPath.at(text));
        } catch (IllegalArgumentException e) {
            table.mistake(key, "is " + Wording.quoted(text) + ", which is not a JSON Pointer", WANTED_PATH);
            return Optional.empty();
        }
    }

    private static Optional<Cut> field(Table table) {
        boolean there = table.has("field");
        char separator = separator(table);
        if (!there && table.has("separator")) {
            table.mistake("separator", "needs field", "say which field it is, for instance field = 1");
        }
        int number = there ? table.wholeIfThere("field", 1, MOST_FIELDS).orElse(1) : 1;
        return there
                ? table.attempt("separator", WANTED_SEPARATOR, () -> new CsvField(number, separator))
                : Optional.empty();
    }

    private static char separator(Table table) {
        String text = table.text("separator", WANTED_SEPARATOR).orElse(",");
        if (text.length() != 1) {
            table.mistake("separator", "is " + Wording.quoted(text) + ", not one character", WANTED_SEPARATOR);
        }
        return text.charAt(0);
    }

    private static Optional<Cut> pattern(Table table) {
        return table.parsed("pattern", WANTED_PATTERN, Excerpt::new);
    }
}
