package dev.lampwright.look;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A named part of the strip with a direction: places 0, 1, 2 … from the beginning of the zone, each on one or more pixels of the strip. A
 * run of pixels has one pixel per place; a mirrored zone has two.
 */
public final class Zone {
    private final int[] pixels;
    private final int[] places;
    private final int length;
    private final String name;
    private final List<Run> runs;

    private Zone(int[] pixels, int[] places, int length) {
        this(pixels, places, length, "");
    }

    private Zone(int[] pixels, int[] places, int length, String name) {
        this.name = name;
        this.pixels = pixels;
        this.places = places;
        this.length = length;
        runs = runs(pixels, places);
    }

    /**
     * Evenly spaced pixels of the zone that show neighbouring places.
     *
     * @param pixel the first of them
     * @param pixelStep from each to the next
     * @param place the place that the first shows
     * @param placeStep from that place to the next one's, 1 or −1
     * @param count how many there are
     */
    record Run(int pixel, int pixelStep, int place, int placeStep, int count) {}

    /** As few runs as possible, from the first pixel on. */
    private static List<Run> runs(int[] pixels, int[] places) {
        List<Run> runs = new ArrayList<>();
        for (int from = 0; from < pixels.length; ) {
            int to = from + 1;
            boolean goesOn = to < pixels.length && Math.abs(places[to] - places[from]) == 1;
            int pixelStep = goesOn ? pixels[to] - pixels[from] : 1;
            int placeStep = goesOn ? places[to] - places[from] : 1;
            while (to < pixels.length
                    && pixels[to] - pixels[to - 1] == pixelStep
                    && places[to] - places[to - 1] == placeStep) {
                to++;
            }
            runs.add(new Run(pixels[from], pixelStep, places[from], placeStep, to - from));
            from = to;
        }
        return List.copyOf(runs);
    }

    /**
     * A run of neighbouring pixels. Pixel 0 of the strip is nearest the controller.
     *
     * @param first pixel where the zone begins, 0 or more
     * @param last pixel where it ends; lower than {@code first} if it runs towards the controller
     * @return the zone
     */
    public static Zone run(int first, int last) {
        int step = first <= last ? 1 : -1;
        int length = Math.abs(last - first) + 1;
        return new Zone(IntStream.range(0, length).map(i -> first + step * i).toArray(), range(length), length);
    }

    /**
     * Any pixels, one per place.
     *
     * @param pixels of the strip, each 0 or more, in the zone's order
     * @return the zone
     * @throws IllegalArgumentException if one appears twice; the message names it
     */
    public static Zone of(int[] pixels) {
        BitSet seen = new BitSet();
        for (int pixel : pixels) {
            if (seen.get(pixel)) {
                throw twice(pixel);
            }
            seen.set(pixel);
        }
        return new Zone(pixels.clone(), range(pixels.length), pixels.length);
    }

    private static IllegalArgumentException twice(int pixel) {
        return new IllegalArgumentException("has pixel " + pixel + " twice; name each pixel once");
    }

    /**
     * No pixels at all.
     *
     * @return a zone on which nothing is drawn
     */
    public static Zone empty() {
        return new Zone(new int[0], new int[0], 0);
    }

    /**
     * This followed by another, as one zone.
     *
     * @param next the rest of the zone
     * @return the two joined
     * @throws IllegalArgumentException if they share a pixel; the message names it
     */
    public Zone then(Zone next) {
        Set<Integer> here = Arrays.stream(pixels).boxed().collect(Collectors.toSet());
        Arrays.stream(next.pixels).filter(here::contains).findFirst().ifPresent(pixel -> {
            throw twice(pixel);
        });
        int[] joinedPixels = IntStream.concat(Arrays.stream(pixels), Arrays.stream(next.pixels))
                .toArray();
        int[] joinedPlaces = IntStream.concat(
                        Arrays.stream(places), Arrays.stream(next.places).map(place -> place + length))
                .toArray();
        return new Zone(joinedPixels, joinedPlaces, length + next.length);
    }

    /**
     * This folded in the middle: place 0 is at both ends, the last place in the middle.
     *
     * @return a zone of half as many places, rounded up
     */
    public Zone mirrored() {
        int[] folded = Arrays.stream(places)
                .map(place -> Math.min(place, length - 1 - place))
                .toArray();
        return new Zone(pixels, folded, (length + 1) / 2);
    }

    /**
     * The part of this zone that exists on another strip. Places without any pixels are removed.
     *
     * @param elsewhere for each pixel its index on the other strip, −1 if it does not exist there
     * @return the zone on the other strip
     */
    public Zone on(int[] elsewhere) {
        int[] kept = IntStream.range(0, pixels.length)
                .filter(index -> elsewhere[pixels[index]] >= 0)
                .toArray();
        int[] left = Arrays.stream(kept)
                .map(index -> places[index])
                .distinct()
                .sorted()
                .toArray();
        int[] keptPixels =
                Arrays.stream(kept).map(index -> elsewhere[pixels[index]]).toArray();
        int[] keptPlaces = Arrays.stream(kept)
                .map(index -> Arrays.binarySearch(left, places[index]))
                .toArray();
        return new Zone(keptPixels, keptPlaces, left.length, name);
    }

    /**
     * This with a name. Zones of the same pixels are equal whatever their names.
     *
     * @param called as in the configuration
     * @return the same pixels
     */
    public Zone named(String called) {
        return new Zone(pixels, places, length, called);
    }

    /**
     * The zone's name.
     *
     * @return as in the configuration; empty if it has none
     */
    public String name() {
        return name;
    }

    /**
     * How many places the zone has.
     *
     * @return 0 or more
     */
    public int length() {
        return length;
    }

    /**
     * How many pixels of the strip the zone has.
     *
     * @return {@link #length} or more
     */
    public int pixelCount() {
        return pixels.length;
    }

    /**
     * One of the zone's pixels.
     *
     * @param index 0 to {@link #pixelCount} − 1
     * @return its index on the strip
     */
    public int pixel(int index) {
        return pixels[index];
    }

    /**
     * The place that one of the zone's pixels shows.
     *
     * @param index 0 to {@link #pixelCount} − 1
     * @return 0 to {@link #length} − 1
     */
    public int place(int index) {
        return places[index];
    }

    /** The whole zone as runs, so that drawing on it needs no table. */
    List<Run> runs() {
        return runs;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Zone zone
                && length == zone.length
                && Arrays.equals(pixels, zone.pixels)
                && Arrays.equals(places, zone.places);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(pixels) + Arrays.hashCode(places);
    }

    /**
     * The zone as written in the configuration.
     *
     * @return for example {@code 0-9 + 29-20}, {@code 0-58 every 2} or {@code 0-59 mirrored}
     */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        for (int from = 0; from < pixels.length; ) {
            int to = endOfRun(from);
            text.append(from > 0 ? " + " : "").append(pixels[from]);
            text.append(to > from ? "-" + pixels[to] : "");
            text.append(to > from && step(from) > 1 ? " every " + step(from) : "");
            from = to + 1;
        }
        return text.append(length < pixels.length ? " mirrored" : "").toString();
    }

    /** The step to the next pixel in either direction; 1 at the last. */
    private int step(int from) {
        return from + 1 < pixels.length ? Math.abs(pixels[from + 1] - pixels[from]) : 1;
    }

    /** Two neighbours are enough for a run; evenly spaced pixels that are further apart need three. */
    private int endOfRun(int from) {
        int to = from;
        int step = from + 1 < pixels.length ? pixels[from + 1] - pixels[from] : 1;
        while (to + 1 < pixels.length && pixels[to + 1] == pixels[to] + step) {
            to++;
        }
        return Math.abs(step) == 1 || to - from >= 2 ? to : from;
    }

    private static int[] range(int length) {
        return IntStream.range(0, length).toArray();
    }
}
