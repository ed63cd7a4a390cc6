package dev.lampwright.cue;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** One of the things that can be wished for, and what counts while nobody wishes. The order is that of a recording. */
public enum Wish {
    /** Share of the light that looks ask for, 0 to 1; white lights are not affected. */
    BRIGHTNESS(Kind.SHARE),
    /** Share of all light that the night leaves, 0 to 1. */
    QUIET(Kind.SHARE),
    /** For each dimmer in use its level from 0 to 1, NaN for as the look says. */
    LEVELS(Kind.FLOATS),
    /** Name of a look to show for a time; empty for none. */
    LOOK(Kind.NAME_FOR_A_TIME),
    /**
     * For a time, premultiplied linear light: four floats for each pixel of the canvas; red is NaN where the look shows. Of no effect
     * on a canvas of another size.
     */
    PIXELS(Kind.FLOATS_FOR_A_TIME),
    /** How often the fault has been acknowledged. */
    ACKNOWLEDGEMENTS(Kind.COUNT),
    /** How often the alarm has been reset. */
    RESETS(Kind.COUNT),
    /** How long brightness takes to change. */
    BRIGHTNESS_FADE(Kind.SECONDS),
    /** How long the night takes to begin or end. */
    QUIET_FADE(Kind.SECONDS),
    /** For each dimmer in use, how long its level takes to change. */
    LEVELS_FADE(Kind.SECONDS),
    /** How long a look takes that is put on, or taken off again. */
    LOOK_FADE(Kind.SECONDS),
    /** How long pixels take to change. */
    PIXELS_FADE(Kind.SECONDS),
    /** How often the fault of each of several printers has been acknowledged, by its name. */
    ACKNOWLEDGEMENTS_OF(Kind.COUNTS),
    /** How often the alarm of each of several printers has been reset, by its name. */
    RESETS_OF(Kind.COUNTS);

    private final Kind kind;

    Wish(Kind kind) {
        this.kind = kind;
    }

    /** What a wish is made of. */
    public enum Kind {
        /** A number from 0 to 1; 1 if nobody wishes. */
        SHARE,
        /** Numbers; none if nobody wishes. */
        FLOATS,
        /** A name that counts until a time; empty if nobody wishes. */
        NAME_FOR_A_TIME,
        /** Numbers that count until a time; none if nobody wishes. */
        FLOATS_FOR_A_TIME,
        /** How often something was asked for. */
        COUNT,
        /** How often something was asked for of each of several, by name. Left out of recordings while there are none. */
        COUNTS,
        /** Times in s, NaN for as long as usual; none if nobody wishes. Left out of recordings while there are none. */
        SECONDS
    }

    /** Something that holds until a time, on the daemon's monotonic clock in ns. */
    record ForATime<T>(T what, long untilNanos) {
        boolean holdsAt(long nanos) {
            return untilNanos - nanos > 0;
        }

        /** How long it stays so that this holds, or does not, in ns. */
        long stillFor(long nanos) {
            return holdsAt(nanos) ? untilNanos - nanos : Long.MAX_VALUE;
        }
    }

    /** Counts by name. */
    record Counts(Map<String, Long> byName) {
        Counts {
            byName = Map.copyOf(byName);
        }

        /** Allocates nothing. */
        long of(String name) {
            Long count = byName.get(name);
            return count == null ? 0 : count;
        }

        Counts oneMore(String name) {
            Map<String, Long> more = new HashMap<>(byName);
            more.merge(name, 1L, Long::sum);
            return new Counts(more);
        }
    }

    /**
     * What this is made of.
     *
     * @return the kind, which says how it is read from {@link Wishes}
     */
    public Kind kind() {
        return kind;
    }

    /**
     * The word for this.
     *
     * @return for instance {@code brightness}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What counts while nobody wishes. */
    Object none() {
        return switch (kind) {
            case SHARE -> 1f;
            case FLOATS, SECONDS -> new float[0];
            case NAME_FOR_A_TIME -> new ForATime<>("", 0);
            case FLOATS_FOR_A_TIME -> new ForATime<>(new float[0], 0);
            case COUNT -> 0L;
            case COUNTS -> new Counts(Map.of());
        };
    }

    /** Whether a value of this kind changes nothing and never has. */
    boolean isPlain(Object value) {
        return switch (kind) {
            case SHARE -> (Float) value == 1;
            case FLOATS, SECONDS -> ((float[]) value).length == 0;
            case NAME_FOR_A_TIME -> ((String) ((ForATime<?>) value).what()).isEmpty();
            case FLOATS_FOR_A_TIME -> ((float[]) ((ForATime<?>) value).what()).length == 0;
            case COUNT -> (Long) value == 0;
            case COUNTS -> ((Counts) value).byName().isEmpty();
        };
    }
}
