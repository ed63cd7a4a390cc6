package dev.lampwright.history;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.upkeep.Printable;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToLongFunction;

/**
 * What has happened as JSON, for the live page, for programs and for the file. Times are in UTC in ISO 8601 format; unknown values are left
 * out, or null in a curve.
 */
public final class HistoryJson {
    private static final String PRINTER = "printer";
    private static final String BEGAN = "began";
    private static final String BEGAN_UNSEEN = "began_unseen";
    private static final String UNTIL = "until";
    private static final String END_UNSEEN = "end_unseen";
    private static final String END = "end";
    private static final String STATE = "state";
    private static final String PROGRESS = "progress";
    private static final String UNWATCHED = "unwatched_s";
    private static final String WORDS = "words";
    private static final String OVER = "over";
    private static final String OVER_UNSEEN = "over_unseen";
    private static final String ACKNOWLEDGED = "acknowledged";
    private static final String AT = "at";
    private static final String WAY = "way";
    private static final String FROM = "from";
    private static final String BY = "by";
    private static final String TO = "to";
    private static final String BED = "bed_C";
    private static final String NOZZLE = "nozzle_C";
    private static final String MILLIAMPS = "strip_mA";
    private static final double MILLIS = 1000;
    private static final int LONGEST_TEXT = 200;
    private static final int SHOWN = 80;
    /** For a time in the years 0 to 9999, with nanoseconds. */
    private static final int LONGEST_TIME = "2026-11-27T12:00:00.123456789Z".length();

    private HistoryJson() {}

    /**
     * Everything.
     *
     * @param accounts what has happened
     * @return an object with {@code as_of}, {@code jobs}, {@code faults}, {@code states} and {@code curves}, which the caller may add to;
     *     where printers have names, each entry has that of its printer
     */
    public static JsonObject of(Accounts accounts) {
        JsonArray pieces = all(accounts, Account::curves, piece -> piece.from().millis(), HistoryJson::of);
        return new JsonObject()
                .put("as_of", accounts.asOf().toString())
                .put("jobs", all(accounts, Account::jobs, job -> job.began().millis(), HistoryJson::of))
                .put(
                        "faults",
                        all(accounts, Account::faults, fault -> fault.began().millis(), HistoryJson::of))
                .put("states", all(accounts, Account::spans, span -> span.from().millis(), HistoryJson::of))
                .put(
                        "curves",
                        new JsonObject()
                                .put("step_s", Curves.STEP_MILLIS / (long) MILLIS)
                                .put("pieces", pieces));
    }

    /** Something that happened, and when, in ms. */
    private record Event(long millis, JsonObject json) {}

    /** Those of all printers, the oldest first. */
    private static <T> JsonArray all(
            Accounts accounts, Function<Account, List<T>> some, ToLongFunction<T> time, Function<T, JsonObject> json) {
        List<Event> events = new ArrayList<>();
        accounts.byPrinter().forEach((printer, account) -> {
            for (T one : some.apply(account)) {
                events.add(new Event(time.applyAsLong(one), json.apply(one).putIfAny(PRINTER, printer)));
            }
        });
        if (accounts.byPrinter().size() > 1) {
            events.sort(Comparator.comparingLong(Event::millis));
        }
        JsonArray array = new JsonArray();
        events.forEach(event -> array.add(event.json()));
        return array;
    }

    static JsonObject of(PastJob job) {
        JsonObject json = put(BEGAN, job.began(), new JsonObject());
        flag(BEGAN_UNSEEN, job.beganUnseen(), json);
        put(UNTIL, job.until(), json);
        flag(END_UNSEEN, job.endUnseen(), json);
        json.put(END, job.end().word())
                .put(STATE, job.state().word())
                .putRounded("took_s", job.took().toMillis() / MILLIS)
                .putRounded(PROGRESS, job.progress());
        return job.unwatchedMillis() == 0 ? json : json.putRounded(UNWATCHED, job.unwatchedMillis() / MILLIS);
    }

    static JsonObject of(PastFault fault) {
        JsonObject json = put(BEGAN, fault.began(), new JsonObject()).putIfAny(WORDS, fault.words());
        fault.over().ifPresent(over -> put(OVER, over, json));
        flag(OVER_UNSEEN, fault.overUnseen(), json);
        fault.acknowledged()
                .ifPresent(one -> json.put(
                        ACKNOWLEDGED,
                        put(AT, one.at(), new JsonObject())
                                .putIfAny(WAY, one.way())
                                .putIfAny(FROM, one.from())
                                .putIfAny(BY, one.by())));
        return json;
    }

    static JsonObject of(StateSpan span) {
        return put(
                TO,
                span.to(),
                put(FROM, span.from(), new JsonObject().put(STATE, span.state().word())));
    }

    static JsonObject of(CurvePiece piece) {
        return put(FROM, piece.from(), new JsonObject())
                .put(BED, array(piece.bed()))
                .put(NOZZLE, array(piece.nozzle()))
                .put(MILLIAMPS, whole(piece.milliamps()));
    }

    private static JsonObject put(String key, Stamp stamp, JsonObject json) {
        return json.put(key, stamp.instant().toString());
    }

    private static void flag(String key, boolean value, JsonObject json) {
        if (value) {
            json.put(key, true);
        }
    }

    private static JsonArray array(float[] values) {
        JsonArray array = new JsonArray();
        for (float value : values) {
            array.add(value);
        }
        return array;
    }

    private static JsonArray whole(float[] values) {
        JsonArray array = new JsonArray();
        for (float value : values) {
            if (Float.isNaN(value)) {
                array.add(value);
            } else {
                array.add((long) value);
            }
        }
        return array;
    }

    /**
     * Reads a job.
     *
     * @throws IllegalArgumentException if it is something else; so do the others
     */
    static PastJob job(JsonNode node) {
        JobEnd end = JobEnd.of(node.path(END).asText()).orElseThrow(() -> senseless(node));
        double progress = node.path(PROGRESS).asDouble(Double.NaN);
        double unwatched = node.path(UNWATCHED).asDouble(0);
        if (!(unwatched >= 0) || progress < 0 || progress > 1) {
            throw senseless(node);
        }
        return new PastJob(
                stamp(node, BEGAN),
                node.path(BEGAN_UNSEEN).asBoolean(),
                stamp(node, UNTIL),
                node.path(END_UNSEEN).asBoolean(),
                end,
                state(node),
                progress,
                Math.round(unwatched * MILLIS));
    }

    static PastFault fault(JsonNode node) {
        JsonNode who = node.path(ACKNOWLEDGED);
        return new PastFault(
                stamp(node, BEGAN),
                text(node, WORDS),
                node.has(OVER) ? Optional.of(stamp(node, OVER)) : Optional.empty(),
                node.path(OVER_UNSEEN).asBoolean(),
                who.isObject()
                        ? Optional.of(
                                new Acknowledgement(stamp(who, AT), text(who, WAY), text(who, FROM), text(who, BY)))
                        : Optional.empty());
    }

    static StateSpan span(JsonNode node) {
        return new StateSpan(state(node), stamp(node, FROM), stamp(node, TO));
    }

    static CurvePiece piece(JsonNode node) {
        float[] bed = floats(node, BED);
        float[] nozzle = floats(node, NOZZLE);
        float[] milliamps = floats(node, MILLIAMPS);
        if (nozzle.length != bed.length || milliamps.length != bed.length) {
            throw senseless(node);
        }
        return new CurvePiece(stamp(node, FROM), bed, nozzle, milliamps);
    }

    private static float[] floats(JsonNode node, String key) {
        JsonNode array = node.path(key);
        if (!array.isArray() || array.size() > Curves.MOST) {
            throw senseless(node);
        }
        float[] values = new float[array.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) array.get(i).asDouble(Double.NaN);
        }
        return values;
    }

    private static PrinterState state(JsonNode node) {
        String word = node.path(STATE).asText();
        return Arrays.stream(PrinterState.values())
                .filter(state -> state.word().equals(word))
                .findFirst()
                .orElseThrow(() -> senseless(node));
    }

    static Stamp stamp(JsonNode node, String key) {
        return Stamp.wall(instant(node, key));
    }

    /** A time; one that no clock can show is not valid. */
    static Instant instant(JsonNode node, String key) {
        try {
            Instant instant = Instant.parse(node.path(key).asText());
            if (instant.toString().length() > LONGEST_TIME) {
                throw senseless(node);
            }
            return instant;
        } catch (DateTimeException e) {
            throw senseless(node);
        }
    }

    private static String text(JsonNode node, String key) {
        return Printable.beginning(node.path(key).asText(), LONGEST_TEXT);
    }

    private static IllegalArgumentException senseless(JsonNode node) {
        return new IllegalArgumentException(
                "has " + Printable.beginning(node.toString(), SHOWN) + " in it, which is not possible");
    }
}
