package dev.lampwright.desk;

import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** The asks in effect, as reported: what they are, and when they end. Immutable. */
public final class AskedFor {
    /** Nothing. */
    public static final AskedFor NOTHING = new AskedFor(List.of(), 0, new Now(0, Instant.EPOCH));

    /** How many places with their own colours are listed individually: the newest. */
    static final int MOST_PLACES = 24;

    private static final double NANOS_PER_SECOND = 1e9;

    private final List<Map.Entry<Aim, Held>> told;
    private final int more;
    private final Now now;

    private AskedFor(List<Map.Entry<Aim, Held>> told, int more, Now now) {
        this.told = List.copyOf(told);
        this.more = more;
        this.now = now;
    }

    /** The asks in effect now, in the order of {@link Ask}; pixels newest first. */
    static AskedFor of(StandingWishes standing, Now now) {
        List<Map.Entry<Aim, Held>> told = new ArrayList<>();
        int more = 0;
        for (Ask ask : Ask.thatStay()) {
            List<Map.Entry<Aim, Held>> all = new ArrayList<>(standing.of(ask));
            if (ask == Ask.PIXELS) {
                Collections.reverse(all);
            }
            int count = Math.min(all.size(), MOST_PLACES);
            told.addAll(all.subList(0, count));
            more += all.size() - count;
        }
        return new AskedFor(told, more, now);
    }

    /** Whether the same things are asked for as in another, until the same time. */
    boolean sameAs(AskedFor other) {
        return told.equals(other.told) && more == other.more;
    }

    /**
     * The asks in effect, as in a message: {@code {"ask":"work","name":"side","value":0.4,"until":"changed"}}; what ends by itself has the
     * time for {@code until}, and the whole seconds until then as {@code left_s}.
     */
    JsonArray json() {
        JsonArray all = new JsonArray();
        for (Map.Entry<Aim, Held> one : told) {
            JsonObject json = new JsonObject()
                    .put("ask", one.getKey().ask().word())
                    .putIfAny("name", one.getKey().name());
            put(one.getValue().setting(), json);
            putEnd(one.getValue().end(), json);
            all.add(json);
        }
        return all;
    }

    private static void put(Setting setting, JsonObject json) {
        if (setting.isShare()) {
            json.putRounded("value", setting.share());
        } else {
            json.put("value", setting.word());
        }
    }

    private void putEnd(End end, JsonObject json) {
        if (end.ends()) {
            json.put("until", end.wallTime(now).truncatedTo(ChronoUnit.SECONDS).toString())
                    .put("left_s", (long) Math.ceil(Math.max(0, end.leftNanos(now)) / NANOS_PER_SECOND));
        } else {
            json.put("until", Request.CHANGED);
        }
    }

    /** How many are not listed individually. */
    int more() {
        return more;
    }

    /**
     * The kinds of asks in effect.
     *
     * @return the words of the asks that have set anything, each once
     */
    public List<String> words() {
        return told.stream().map(one -> one.getKey().ask().word()).distinct().toList();
    }

    /**
     * How many things an ask has set.
     *
     * @param ask which
     * @return such as the number of white lights with their own level
     */
    public int count(Ask ask) {
        return (int) told.stream().filter(one -> one.getKey().ask() == ask).count() + (ask == Ask.PIXELS ? more : 0);
    }

    /**
     * When the last thing set by an ask ends.
     *
     * @param ask which
     * @return seconds since 1970, UTC; infinite if it stays until changed; empty if nothing is set
     */
    public OptionalDouble endEpochSeconds(Ask ask) {
        return told.stream()
                .filter(one -> one.getKey().ask() == ask)
                .mapToDouble(one -> epochSeconds(one.getValue().end()))
                .max();
    }

    private double epochSeconds(End end) {
        return end.ends() ? end.wallTime(now).toEpochMilli() / 1000.0 : Double.POSITIVE_INFINITY;
    }

    /**
     * How long something set by an ask stays.
     *
     * @param ask an ask that sets a single thing
     * @return s; empty if nothing is set, or it stays until changed
     */
    public OptionalDouble leftSeconds(Ask ask) {
        return told.stream()
                .filter(one -> one.getKey().ask() == ask && one.getValue().end().ends())
                .mapToDouble(one -> Math.max(0, one.getValue().end().leftNanos(now)) / NANOS_PER_SECOND)
                .max();
    }
}
