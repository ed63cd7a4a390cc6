package dev.lampwright.colour;

import java.lang.ref.WeakReference;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;

/**
 * Colours from 0 to 1, flowing one into the next or in steps. Everything is calculated in advance, so that lookups are cheap and allocate
 * nothing. A value: immutable, and equal to another with the same stops and the same interpolation. Equal ones from {@link #flowing} and {@link
 * #stepped} are calculated and kept only once, because many rigs show the same looks.
 */
public final class Gradient {
    /** From one stop to the next: fine enough that a straight line between two entries is off by less than a quarter of a level of 255. */
    private static final int PARTS = 256;

    private static final int ENTRY = 4;
    private static final int ALPHA = 3;

    /** A share that is on a stop except for rounding counts as past it. */
    private static final double ROUNDING = 1e-12;

    /** Each for as long as anybody uses it. */
    private static final Map<Recipe, WeakReference<Gradient>> MADE = new WeakHashMap<>();

    private final Recipe recipe;
    private final double[] places;
    private final double[] partsPerShare;
    private final int parts;
    private final int lastStretch;

    /**
     * For each stretch from one stop to the next, parts + 1 entries of red, green, blue and alpha; and one after the end, which is never
     * used.
     */
    private final float[] table;

    /** What a gradient is calculated from. */
    private record Recipe(List<Stop> stops, int parts, Interpolation way) {
        Recipe {
            require(stops);
            stops = List.copyOf(stops);
        }
    }

    /**
     * Creates a gradient of evenly spaced colours that flow through OKLab.
     *
     * @param colours one or more, from 0 to 1
     * @throws IllegalArgumentException if there is none
     */
    public Gradient(List<Light> colours) {
        this(new Recipe(
                Stop.evenly(colours.stream().map(Colour::of).toList()),
                colours.size() > 1 ? PARTS : 0,
                Interpolation.OKLAB));
    }

    private Gradient(Recipe recipe) {
        this.recipe = recipe;
        List<Stop> stops = recipe.stops();
        places = stops.stream().mapToDouble(Stop::at).toArray();
        parts = recipe.parts();
        partsPerShare = new double[places.length - 1];
        Arrays.setAll(partsPerShare, i -> parts / (places[i + 1] - places[i]));
        int stretches = parts == 0 ? places.length : places.length - 1;
        lastStretch = stretches - 1;
        table = new float[ENTRY * (stretches * (parts + 1) + 1)];
        for (int i = 0; i < stretches; i++) {
            Colour from = stops.get(i).colour();
            fill(i, new Mix(from, parts == 0 ? from : stops.get(i + 1).colour(), recipe.way()));
        }
    }

    private static Gradient of(Recipe recipe) {
        synchronized (MADE) {
            WeakReference<Gradient> kept = MADE.get(recipe);
            Gradient before = kept == null ? null : kept.get();
            if (before != null) {
                return before;
            }
            Gradient made = new Gradient(recipe);
            MADE.remove(recipe);
            MADE.put(recipe, new WeakReference<>(made));
            return made;
        }
    }

    /**
     * Creates a flowing gradient. It is constant before the first stop and after the last. Where two stops share a place, it changes
     * abruptly.
     *
     * @param stops one or more, in the order of their places
     * @param way the interpolation from each to the next
     * @return the gradient
     * @throws IllegalArgumentException if there is none, or they are out of order or not within 0 to 1
     */
    public static Gradient flowing(List<Stop> stops, Interpolation way) {
        return of(new Recipe(stops, stops.size() > 1 ? PARTS : 0, way));
    }

    /**
     * Creates a gradient in steps: each colour applies from its place until the next, the first also before its place.
     *
     * @param stops one or more, in the order of their places
     * @return the gradient
     * @throws IllegalArgumentException if there is none, or they are out of order or not within 0 to 1
     */
    public static Gradient stepped(List<Stop> stops) {
        return of(new Recipe(stops, 0, Interpolation.OKLAB));
    }

    /**
     * Looks up a colour.
     *
     * @param share where in the gradient; values outside 0 to 1 count as the nearer end, and NaN as 0
     * @param rgb where to write linear red, green and blue, not multiplied with alpha
     * @param at index of red
     */
    public void colour(double share, float[] rgb, int at) {
        float place = place(share);
        int entry = (int) place;
        float rest = place - entry;
        for (int i = 0; i < ALPHA; i++) {
            rgb[at + i] = value(ENTRY * entry + i, rest);
        }
    }

    /**
     * Looks up how much is covered.
     *
     * @param share where in the gradient, as for {@link #colour}
     * @return alpha, 0 to 1
     */
    public float alpha(double share) {
        float place = place(share);
        int entry = (int) place;
        return value(ENTRY * entry + ALPHA, place - entry);
    }

    /**
     * Looks up a colour and its alpha together.
     *
     * @param share where in the gradient, as for {@link #colour}
     * @param rgba where to write linear red, green and blue, not multiplied with alpha, and alpha
     * @param at index of red
     */
    public void colourAndAlpha(double share, float[] rgba, int at) {
        put(place(share), rgba, at);
    }

    /**
     * Looks up consecutive colours, with their alpha.
     *
     * @param first where in the gradient the first is
     * @param step distance to the next one, 0 or more
     * @param round whether values outside 0 to 1 wrap around to the other end, rather than counting as the nearer one
     * @param rgba where to write them, as {@link #colourAndAlpha} does: entry {@code from} up to but excluding {@code to}, four floats each
     * @param from entry of the first
     * @param to entry after the last
     */
    public void along(double first, double step, boolean round, float[] rgba, int from, int to) {
        double share = ROUNDING + (round ? first - Math.floor(first) : first);
        double end = round ? 1 : Double.POSITIVE_INFINITY;
        int stretch = 0;
        int i = from;
        while (i < to) {
            while (share >= end) {
                share--;
                stretch = 0;
            }
            while (stretch < lastStretch && share >= places[stretch + 1]) {
                stretch++;
            }
            double next = stretch < lastStretch ? places[stretch + 1] : end;
            for (; i < to && share < next; i++) {
                put(entry(stretch, share), rgba, ENTRY * i);
                share += step;
            }
        }
    }

    private void put(float place, float[] rgba, int at) {
        int entry = (int) place;
        float rest = place - entry;
        int here = ENTRY * entry;
        rgba[at] = table[here] + (table[here + ENTRY] - table[here]) * rest;
        rgba[at + 1] = table[here + 1] + (table[here + ENTRY + 1] - table[here + 1]) * rest;
        rgba[at + 2] = table[here + 2] + (table[here + ENTRY + 2] - table[here + 2]) * rest;
        rgba[at + ALPHA] = table[here + ALPHA] + (table[here + ENTRY + ALPHA] - table[here + ALPHA]) * rest;
    }

    /** Compares the stops and the interpolation; everything calculated from them is then equal as well. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Gradient gradient && recipe.equals(gradient.recipe);
    }

    @Override
    public int hashCode() {
        return recipe.hashCode();
    }

    private float value(int index, float rest) {
        return table[index] + (table[index + ENTRY] - table[index]) * rest;
    }

    /** The entry and the distance to the next. */
    private float place(double share) {
        int stretch = 0;
        while (stretch < lastStretch && share >= places[stretch + 1]) {
            stretch++;
        }
        return entry(stretch, share);
    }

    private float entry(int stretch, double share) {
        return stretch * (parts + 1) + (parts == 0 ? 0 : within(stretch, share));
    }

    private float within(int stretch, double share) {
        double from = places[stretch];
        double to = places[stretch + 1];
        if (share >= to) {
            return parts;
        }
        return share > from ? (float) ((share - from) * partsPerShare[stretch]) : 0;
    }

    private void fill(int stretch, Mix mix) {
        for (int i = 0; i <= parts; i++) {
            double share = parts == 0 ? 0 : (double) i / parts;
            int at = ENTRY * (stretch * (parts + 1) + i);
            Light light = mix.colour(share).light();
            table[at] = light.red();
            table[at + 1] = light.green();
            table[at + 2] = light.blue();
            table[at + ALPHA] = (float) mix.alpha(share);
        }
    }

    private static void require(List<Stop> stops) {
        if (stops.isEmpty()) {
            throw new IllegalArgumentException("a gradient without colours; give it one or more");
        }
        double before = 0;
        for (Stop stop : stops) {
            if (!(stop.at() >= before && stop.at() <= 1)) {
                throw new IllegalArgumentException("a colour at " + stop.at() + " after one at " + before
                        + "; places in a gradient go from 0 to 1 and never back");
            }
            before = stop.at();
        }
    }
}
