package dev.lampwright.cue;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** One of the things that can be wished for, and its value without a wish. The order is that of a recording. */
public enum Wish {
    /** Share of the light that looks ask for, 0 to 1; white lights are not affected. */
    BRIGHTNESS(Kind.SHARE),
    /** Share of all light that quiet hours leave, 0 to 1. */
    QUIET(Kind.SHARE),
    /** For each dimmer in use its level from 0 to 1, NaN for the look's level. */
    LEVELS(Kind.FLOATS),
    /** Name of a look to show for a time; empty if none. */
    LOOK(Kind.NAME_FOR_A_TIME),
    /**
     * For a time, premultiplied linear light: four floats for each pixel of the canvas; red is NaN where the look shows. Has no effect on a
     * canvas of another size.
     */
    PIXELS(Kind.FLOATS_FOR_A_TIME),
    /** How often the fault has been acknowledged. */
    ACKNOWLEDGEMENTS(Kind.COUNT),
    /** How often the alarm has been reset. */
    RESETS(Kind.COUNT),
    /** How long brightness takes to change. */
    BRIGHTNESS_FADE(Kind.SECONDS),
    /** How long quiet hours take to begin or end. */
    QUIET_FADE(Kind.SECONDS),
    /** For each dimmer in use, how long its level takes to change. */
    LEVELS_FADE(Kind.SECONDS),
    /** How long the fade to or from a look takes. */
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

    /** The kind of a wish's value. */
    public enum Kind {
        /** A number from 0 to 1; 1 without a wish. */
        SHARE,
        /** Numbers; none without a wish. */
        FLOATS,
        /** A name that applies until a time; empty without a wish. */
        NAME_FOR_A_TIME,
        /** Numbers that apply until a time; none without a wish. */
        FLOATS_FOR_A_TIME,
        /** How often something was asked for. */
        COUNT,
        /** How often something was asked for each of several, by name. Left out of recordings while there are none. */
        COUNTS,
        /** Times in s, NaN for the default time; none without a wish. Left out of recordings while there are none. */
        SECONDS
    }

    /** Something that applies until a time, on the daemon's monotonic clock in ns. */
    record ForATime<T>(T what, long untilNanos) {
        boolean holdsAt(long nanos) {
            return untilNanos - nanos > 0;
        }

        /** How long it stays true or false that this applies, in ns. */
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
     * The kind of its value.
     *
     * @return the kind, which says how it is read from {@link Wishes}
     */
    public Kind kind() {
        return kind;
    }

    /**
     * The word for this.
     *
     * @return for example {@code brightness}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The value without a wish. */
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

    /** Whether a value of this kind changes nothing and never did. */
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
