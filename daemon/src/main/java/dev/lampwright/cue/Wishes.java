package dev.lampwright.cue;

import dev.lampwright.cue.Wish.ForATime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What people have asked for, in addition to the cues: a value for each {@link Wish}. Immutable; each ask makes a new one. Passing a wish
 * of the wrong kind to a method is a {@link ClassCastException}.
 */
public final class Wishes {
    /** Without any asks. */
    public static final Wishes NONE = none();

    /** A value for each wish; never changed. */
    private final EnumMap<Wish, Object> values;

    private final Optional<Then> then;

    private Wishes(EnumMap<Wish, Object> values, Optional<Then> then) {
        this.values = values;
        this.then = then;
    }

    /** The wishes from a time on. */
    private record Then(long fromNanos, Wishes wishes) {}

    private static Wishes none() {
        EnumMap<Wish, Object> values = new EnumMap<>(Wish.class);
        for (Wish wish : Wish.values()) {
            values.put(wish, wish.none());
        }
        return new Wishes(values, Optional.empty());
    }

    private Wishes put(Wish wish, Object value) {
        EnumMap<Wish, Object> changed = new EnumMap<>(values);
        changed.put(wish, wish.none().getClass().cast(value));
        return new Wishes(changed, then);
    }

    /**
     * These until a time, and others from then on, so that everything that ends at that time ends in one frame.
     *
     * @param nanos when, on the daemon's monotonic clock
     * @param next the wishes from then on
     * @return new wishes
     */
    public Wishes until(long nanos, Wishes next) {
        return new Wishes(values, Optional.of(new Then(nanos, next)));
    }

    /**
     * The wishes at a time. Allocates nothing.
     *
     * @param nanos when, on the daemon's monotonic clock
     * @return these, or those that follow
     */
    public Wishes at(long nanos) {
        return then.isPresent() && nanos - then.get().fromNanos() >= 0
                ? then.get().wishes().at(nanos)
                : this;
    }

    private Object value(Wish wish) {
        return values.get(wish);
    }

    /**
     * These, with a different share.
     *
     * @param wish a share
     * @param share 0 to 1
     * @return new wishes
     */
    public Wishes with(Wish wish, double share) {
        return put(wish, (float) share);
    }

    /**
     * These, with a different count.
     *
     * @param wish a count
     * @param count how often
     * @return new wishes
     */
    public Wishes withCount(Wish wish, long count) {
        return put(wish, count);
    }

    /**
     * These, with different counts.
     *
     * @param wish counts
     * @param counts how often, by name
     * @return new wishes
     */
    public Wishes withCounts(Wish wish, Map<String, Long> counts) {
        return put(wish, new Wish.Counts(counts));
    }

    /**
     * The counts.
     *
     * @param wish counts
     * @return how often, by name
     */
    public Map<String, Long> counts(Wish wish) {
        return ((Wish.Counts) value(wish)).byName();
    }

    /**
     * These, with different numbers.
     *
     * @param wish floats, or seconds
     * @param floats not kept
     * @return new wishes
     */
    public Wishes with(Wish wish, float[] floats) {
        return put(wish, floats.clone());
    }

    /**
     * These, with a different name.
     *
     * @param wish a name for a time
     * @param name which
     * @param untilNanos how long it applies, on the daemon's monotonic clock
     * @return new wishes
     */
    public Wishes with(Wish wish, String name, long untilNanos) {
        return put(wish, new ForATime<>(name, untilNanos));
    }

    /**
     * These, with different numbers for a time.
     *
     * @param wish floats for a time
     * @param floats not kept
     * @param untilNanos how long they apply, on the daemon's monotonic clock
     * @return new wishes
     */
    public Wishes with(Wish wish, float[] floats, long untilNanos) {
        return put(wish, new ForATime<>(floats.clone(), untilNanos));
    }

    /**
     * A share.
     *
     * @param wish a share
     * @return 0 to 1
     */
    public float share(Wish wish) {
        return (Float) value(wish);
    }

    /**
     * A count.
     *
     * @param wish a count
     * @return how often
     */
    public long count(Wish wish) {
        return (Long) value(wish);
    }

    /**
     * Numbers, whether or not they still apply.
     *
     * @param wish floats, for a time or not, or seconds
     * @return a copy
     */
    public List<Float> floats(Wish wish) {
        float[] floats = (float[]) (value(wish) instanceof ForATime<?> held ? held.what() : value(wish));
        List<Float> list = new ArrayList<>(floats.length);
        for (float number : floats) {
            list.add(number);
        }
        return list;
    }

    /**
     * A name, whether or not it still applies.
     *
     * @param wish a name for a time
     * @return may be empty
     */
    public String name(Wish wish) {
        return (String) held(wish).what();
    }

    /**
     * How long something applies.
     *
     * @param wish something for a time
     * @return ns on the daemon's monotonic clock
     */
    public long untilNanos(Wish wish) {
        return held(wish).untilNanos();
    }

    private ForATime<?> held(Wish wish) {
        return (ForATime<?>) value(wish);
    }

    /**
     * These, with a different brightness.
     *
     * @param share of the light that looks ask for, 0 to 1; white lights are not affected
     * @return new wishes
     */
    public Wishes withBrightness(double share) {
        return with(Wish.BRIGHTNESS, share);
    }

    /**
     * These, with all light dimmed for quiet hours, or not.
     *
     * @param share of the light that is left, 0 to 1; 1 for no dimming
     * @return new wishes
     */
    public Wishes withQuiet(double share) {
        return with(Wish.QUIET, share);
    }

    /**
     * These, with individual levels for white lights.
     *
     * @param levels 0 to 1 for each dimmer in use, NaN for the look's level; not kept
     * @return new wishes
     */
    public Wishes withLevels(float[] levels) {
        return with(Wish.LEVELS, levels);
    }

    /**
     * These, with a look shown.
     *
     * @param name of the look; an unknown one has no effect
     * @param untilNanos how long, on the daemon's monotonic clock
     * @return new wishes
     */
    public Wishes withLook(String name, long untilNanos) {
        return with(Wish.LOOK, name, untilNanos);
    }

    /**
     * These, with individually set pixels.
     *
     * @param rgba as in {@link Wish#PIXELS}; not kept
     * @param untilNanos how long, on the daemon's monotonic clock
     * @return new wishes
     */
    public Wishes withPixels(float[] rgba, long untilNanos) {
        return with(Wish.PIXELS, rgba, untilNanos);
    }

    /**
     * These, with the fault acknowledged one more time.
     *
     * @return new wishes
     */
    public Wishes acknowledged() {
        return withCount(Wish.ACKNOWLEDGEMENTS, acknowledgements() + 1);
    }

    /**
     * These, with the alarm reset one more time.
     *
     * @return new wishes
     */
    public Wishes reset() {
        return withCount(Wish.RESETS, resets() + 1);
    }

    /**
     * Share of the light that looks ask for.
     *
     * @return 0 to 1
     */
    public float brightness() {
        return share(Wish.BRIGHTNESS);
    }

    /**
     * Share of the light that quiet hours leave.
     *
     * @return 0 to 1; 1 outside them
     */
    public float quiet() {
        return share(Wish.QUIET);
    }

    /**
     * The level of a white light.
     *
     * @param dimmer which, counted among those in use
     * @return 0 to 1, NaN for the look's level
     */
    public float level(int dimmer) {
        float[] levels = (float[]) value(Wish.LEVELS);
        return dimmer < levels.length ? levels[dimmer] : Float.NaN;
    }

    /**
     * The look that is asked for.
     *
     * @param nanos when
     * @return its name, empty if none is
     */
    public String lookAt(long nanos) {
        return held(Wish.LOOK).holdsAt(nanos) ? name(Wish.LOOK) : "";
    }

    /**
     * The time until the next ask ends.
     *
     * @param nanos the time
     * @return ns, more than 0; the largest value if nothing ends
     */
    long stillFor(long nanos) {
        return Math.min(held(Wish.LOOK).stillFor(nanos), held(Wish.PIXELS).stillFor(nanos));
    }

    /**
     * Whether nothing in these changes any light, or ever has.
     *
     * @return true for {@link #NONE} and the like
     */
    public boolean plain() {
        return values.entrySet().stream().allMatch(entry -> entry.getKey().isPlain(entry.getValue()));
    }

    /** How long a change takes, in s; NaN for the default time. */
    float fade(Wish wish) {
        return fade(wish, 0);
    }

    /** How long a change of one of several takes, in s; NaN for the default time. */
    float fade(Wish wish, int which) {
        float[] seconds = (float[]) value(wish);
        return which < seconds.length ? seconds[which] : Float.NaN;
    }

    /** The individually set pixels, an empty array if there are none; must not be modified. */
    float[] pixelsAt(long nanos) {
        ForATime<?> pixels = held(Wish.PIXELS);
        return (float[]) (pixels.holdsAt(nanos) ? pixels : NONE.held(Wish.PIXELS)).what();
    }

    /** How often the fault has been acknowledged. */
    long acknowledgements() {
        return count(Wish.ACKNOWLEDGEMENTS);
    }

    /** How often the alarm has been reset. */
    long resets() {
        return count(Wish.RESETS);
    }

    /** How often the fault of a printer has been acknowledged, with or without its name. Allocates nothing. */
    long acknowledgements(String printer) {
        return acknowledgements() + ((Wish.Counts) value(Wish.ACKNOWLEDGEMENTS_OF)).of(printer);
    }

    /** How often the alarm of a printer has been reset, with or without its name. Allocates nothing. */
    long resets(String printer) {
        return resets() + ((Wish.Counts) value(Wish.RESETS_OF)).of(printer);
    }
}
