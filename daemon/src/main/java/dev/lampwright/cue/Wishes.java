package dev.lampwright.cue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;

/** What people have asked for, beyond what the cues say. Immutable; each thing asked for makes a new one. */
public final class Wishes {
    /** Nobody has asked for anything. */
    public static final Wishes NONE =
            new Wishes(1, 1, new float[0], new ForATime<>("", 0), new ForATime<>(new float[0], 0), 0, 0);

    private final float brightness;
    private final float quiet;
    private final float[] levels;
    private final ForATime<String> look;
    private final ForATime<float[]> pixels;
    private final long acknowledgements;
    private final long resets;

    private Wishes(
            float brightness,
            float quiet,
            float[] levels,
            ForATime<String> look,
            ForATime<float[]> pixels,
            long acknowledgements,
            long resets) {
        this.brightness = brightness;
        this.quiet = quiet;
        this.levels = levels;
        this.look = look;
        this.pixels = pixels;
        this.acknowledgements = acknowledgements;
        this.resets = resets;
    }

    /** Something that holds until a time, on the daemon's monotonic clock in ns. */
    private record ForATime<T>(T what, long untilNanos) {
        boolean holdsAt(long nanos) {
            return untilNanos - nanos > 0;
        }
    }

    /**
     * These, with another brightness.
     *
     * @param share of the light that looks ask for, 0 to 1; white lights are not meant
     * @return new wishes
     */
    public Wishes withBrightness(double share) {
        return new Wishes((float) share, quiet, levels, look, pixels, acknowledgements, resets);
    }

    /**
     * These, with all light dimmed for the night, or not.
     *
     * @param share of the light that is left, 0 to 1; 1 for none of it
     * @return new wishes
     */
    public Wishes withQuiet(double share) {
        return new Wishes(brightness, (float) share, levels, look, pixels, acknowledgements, resets);
    }

    /**
     * These, with white lights at levels of their own.
     *
     * @param newLevels 0 to 1 for each dimmer in use, NaN for as the look says; not kept
     * @return new wishes
     */
    public Wishes withLevels(float[] newLevels) {
        return new Wishes(brightness, quiet, newLevels.clone(), look, pixels, acknowledgements, resets);
    }

    /**
     * These, with a look put on.
     *
     * @param name of the look; one that there is not has no effect
     * @param untilNanos how long, on the daemon's monotonic clock
     * @return new wishes
     */
    public Wishes withLook(String name, long untilNanos) {
        ForATime<String> newLook = new ForATime<>(name, untilNanos);
        return new Wishes(brightness, quiet, levels, newLook, pixels, acknowledgements, resets);
    }

    /**
     * These, with pixels that have a light of their own.
     *
     * @param rgba premultiplied linear light, four floats for each pixel of the canvas; red is NaN where the look shows. Not kept. Of no
     *     effect on a canvas of another size
     * @param untilNanos how long, on the daemon's monotonic clock
     * @return new wishes
     */
    public Wishes withPixels(float[] rgba, long untilNanos) {
        ForATime<float[]> newPixels = new ForATime<>(rgba.clone(), untilNanos);
        return new Wishes(brightness, quiet, levels, look, newPixels, acknowledgements, resets);
    }

    /**
     * These, with the fault acknowledged once more.
     *
     * @return new wishes
     */
    public Wishes acknowledged() {
        return new Wishes(brightness, quiet, levels, look, pixels, acknowledgements + 1, resets);
    }

    /**
     * These, with the alarm reset once more.
     *
     * @return new wishes
     */
    public Wishes reset() {
        return new Wishes(brightness, quiet, levels, look, pixels, acknowledgements, resets + 1);
    }

    /**
     * These without what is made for one set of lights: levels and pixels. To be used when the lights are others.
     *
     * @return new wishes
     */
    public Wishes forOtherLights() {
        return new Wishes(brightness, quiet, NONE.levels, look, NONE.pixels, acknowledgements, resets);
    }

    /**
     * Share of the light that looks ask for.
     *
     * @return 0 to 1
     */
    public float brightness() {
        return brightness;
    }

    /**
     * Share of the light that the night leaves.
     *
     * @return 0 to 1; 1 by day
     */
    public float quiet() {
        return quiet;
    }

    /**
     * The level of a white light.
     *
     * @param dimmer which, counted among those in use
     * @return 0 to 1, NaN for as the look says
     */
    public float level(int dimmer) {
        return dimmer < levels.length ? levels[dimmer] : Float.NaN;
    }

    /**
     * The levels of all white lights.
     *
     * @param dimmers how many dimmers are in use
     * @return a new array, NaN for as the look says
     */
    public float[] levels(int dimmers) {
        float[] all = Arrays.copyOf(levels, dimmers);
        Arrays.fill(all, Math.min(levels.length, dimmers), dimmers, Float.NaN);
        return all;
    }

    /**
     * The look that is put on.
     *
     * @param nanos when
     * @return its name, empty if none is
     */
    public String lookAt(long nanos) {
        return look.holdsAt(nanos) ? look.what() : "";
    }

    /**
     * How long the look that is put on stays.
     *
     * @param nanos when
     * @return ns that are left; empty if none is put on
     */
    public OptionalLong lookLeft(long nanos) {
        boolean on = !look.what().isEmpty() && look.holdsAt(nanos);
        return on ? OptionalLong.of(look.untilNanos() - nanos) : OptionalLong.empty();
    }

    /**
     * Whether there is nothing in these that changes any light or has ever changed any.
     *
     * @return true for {@link #NONE} and its like
     */
    public boolean plain() {
        return brightness == 1
                && quiet == 1
                && levels.length == 0
                && look.what().isEmpty()
                && pixels.what().length == 0
                && acknowledgements == 0
                && resets == 0;
    }

    /**
     * All of these as plain values, to be written down.
     *
     * @param pixels premultiplied linear light, four floats a pixel of the canvas, red NaN where the look shows
     * @param levels 0 to 1 for each dimmer, NaN for as the look says
     * @param brightness share of the light that looks ask for
     * @param quiet share of the light that the night leaves
     * @param look name of the look that is put on, perhaps empty
     * @param lookUntilNanos how long it is
     * @param pixelsUntilNanos how long pixels have a light of their own
     * @param acknowledgements how often the fault has been acknowledged
     * @param resets how often the alarm has been reset
     */
    public record Values(
            float brightness,
            float quiet,
            List<Float> levels,
            String look,
            long lookUntilNanos,
            List<Float> pixels,
            long pixelsUntilNanos,
            long acknowledgements,
            long resets) {}

    /**
     * These as plain values.
     *
     * @return copies
     */
    public Values values() {
        return new Values(
                brightness,
                quiet,
                list(levels),
                look.what(),
                look.untilNanos(),
                list(pixels.what()),
                pixels.untilNanos(),
                acknowledgements,
                resets);
    }

    /**
     * Wishes of plain values.
     *
     * @param values as {@link #values} gives them
     * @return the same wishes
     */
    public static Wishes of(Values values) {
        return new Wishes(
                values.brightness(),
                values.quiet(),
                array(values.levels()),
                new ForATime<>(values.look(), values.lookUntilNanos()),
                new ForATime<>(array(values.pixels()), values.pixelsUntilNanos()),
                values.acknowledgements(),
                values.resets());
    }

    private static List<Float> list(float[] floats) {
        List<Float> list = new ArrayList<>(floats.length);
        for (float value : floats) {
            list.add(value);
        }
        return list;
    }

    private static float[] array(List<Float> list) {
        float[] floats = new float[list.size()];
        for (int i = 0; i < floats.length; i++) {
            floats[i] = list.get(i);
        }
        return floats;
    }

    /** The pixels that have a light of their own, an empty array if there are none; not to be changed. */
    float[] pixelsAt(long nanos) {
        return pixels.holdsAt(nanos) ? pixels.what() : NONE.pixels.what();
    }

    /** How often the fault has been acknowledged. */
    long acknowledgements() {
        return acknowledgements;
    }

    /** How often the alarm has been reset. */
    long resets() {
        return resets;
    }
}
