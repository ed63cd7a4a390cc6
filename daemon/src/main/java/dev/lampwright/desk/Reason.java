package dev.lampwright.desk;

import dev.lampwright.json.JsonObject;
import dev.lampwright.upkeep.Printable;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Why an ask is refused, in English; its code and values allow the same in other languages. */
public enum Reason {
    /** No ask has this word. */
    UNKNOWN_ASK("\"{word}\" is not something you can ask for; choose one of: {choice}"),
    /** More than anybody needs. */
    TOO_LONG("the message is longer than {most} characters; send a shorter one"),
    /** A value that is not valid. */
    NOT_VALID("{key} is {given}; {wanted}"),
    /** A required value is missing. */
    MISSING("{key} is missing; {wanted}"),
    /** An unknown key. */
    UNKNOWN_KEY("{key} is not known; {wanted}"),
    /** Two keys that exclude each other. */
    EXCLUSIVE("{one} and {other} cannot be combined; give one of them"),
    /** No look has this name. */
    UNKNOWN_LOOK("there is no look \"{name}\"; {wanted}"),
    /** No white light has this name. */
    UNKNOWN_LIGHT("there is no white light \"{name}\"; choose one of: {choice}"),
    /** No white light is fitted. */
    NO_WHITE_LIGHT("there is no white light; fit one in [dimmers]"),
    /** No zone has this name. */
    UNKNOWN_ZONE("there is no zone \"{name}\"; choose one of: {choice}, or pixels such as 3 or 5-9"),
    /** Pixels that the strip does not have. */
    PAST_THE_END("{place} is past the end of the strip; stay within 0-{last}"),
    /** A colour that cannot be read. */
    NOT_A_COLOUR("{place}: {trouble}"),
    /** More places than can be kept. */
    TOO_MANY_PLACES(
            "more than {most} places would have colours of their own; give zones and runs such as 5-9, or end some with"
                    + " \"auto\""),
    /** What should return to automatic is under a colour that covers more. */
    COLOUR_OF_ANOTHER("the colour there is that of {name}; end that with {message}"),
    /** Nothing to acknowledge. */
    NO_FAULT_TO_ACKNOWLEDGE("there is no fault to acknowledge"),
    /** Nothing to reset. */
    NO_FAULT_TO_RESET("there is no fault to reset"),
    /** Acknowledge before resetting. */
    NOT_ACKNOWLEDGED("the fault has not been acknowledged; acknowledge it first"),
    /** The fault must end before resetting. */
    FAULT_LASTS("the fault is not over yet; reset it once it is"),
    /** No printer has this name. */
    UNKNOWN_PRINTER("there is no printer \"{name}\"; choose one of: {choice}"),
    /** More than one printer is possible, and none was named. */
    SEVERAL_FAULTS("several printers have a fault; give the name of one: {choice}");

    /** Longer values from outside are shortened. */
    private static final int LONGEST_VALUE = 300;

    private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

    private final String text;

    Reason(String text) {
        this.text = text;
    }

    /** The code for programs. */
    String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * This reason with its values.
     *
     * @param values in the order in which they appear in the text
     */
    Given with(Object... values) {
        List<String> names =
                PLACE.matcher(text).results().map(place -> place.group(1)).toList();
        if (values.length != names.size()) {
            throw new IllegalArgumentException(this + " takes " + names);
        }
        Map<String, String> named = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i++) {
            named.put(names.get(i), Printable.beginning(String.valueOf(values[i]), LONGEST_VALUE));
        }
        return new Given(this, Collections.unmodifiableMap(named));
    }

    /**
     * A reason in one case.
     *
     * @param reason which
     * @param values by their names in the text
     */
    public record Given(Reason reason, Map<String, String> values) {
        /** In English, with what would be valid; one line. */
        String text() {
            return PLACE.matcher(reason.text).replaceAll(place -> Matcher.quoteReplacement(values.get(place.group(1))));
        }

        /** Code and values, added to a message. */
        JsonObject addTo(JsonObject message) {
            JsonObject json = new JsonObject();
            values.forEach(json::put);
            return message.put("code", reason.code()).put("values", json);
        }
    }
}
