package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The order in which lights are dimmed: each pixel and each dimmer has a rank, and a lower one is dark before the next is touched. A
 * light that several names cover has the highest rank among them, so it is dimmed as late as any of them.
 */
public final class Ranks {
    private static final Set<String> STATUS_ZONES = Set.of("bed", "nozzle", "job");
    private static final int NONE = -1;

    private final int[] pixels;
    private final int[] dimmers;
    private final int count;
    private final int[] runs;

    private Ranks(int[] pixels, int[] dimmers, int count) {
        this.pixels = pixels;
        runs = IntStream.rangeClosed(0, pixels.length)
                .filter(i -> i == 0 || i == pixels.length || pixels[i] != pixels[i - 1])
                .toArray();
        this.dimmers = dimmers;
        this.count = count;
    }

    /**
     * Ranks by name.
     *
     * @param fitting what is fitted
     * @param dimOrder names of zones and dimmers, the first to be dimmed first; unknown names have no effect. Lights without a name have
     *     the highest rank. If this is empty, everything except bed, nozzle and job has the lower of two ranks
     * @return the ranks
     */
    public static Ranks of(Fitting fitting, Optional<List<String>> dimOrder) {
        Canvas canvas = new Canvas(fitting);
        if (dimOrder.isEmpty()) {
            STATUS_ZONES.forEach(zone -> canvas.cover(zone, 1));
            return canvas.ranks(0, 2);
        }
        List<String> names = dimOrder.get();
        for (int rank = 0; rank < names.size(); rank++) {
            canvas.cover(names.get(rank), rank);
        }
        return canvas.ranks(names.size(), names.size() + 1);
    }

    /**
     * Everything in one rank.
     *
     * @param pixels pixels of the strip
     * @param dimmers dimmers in use
     * @return a single rank
     */
    public static Ranks alike(int pixels, int dimmers) {
        return new Ranks(new int[pixels], new int[dimmers], 1);
    }

    /** How many ranks there are, 1 or more. */
    int count() {
        return count;
    }

    /** The rank of a pixel of the strip, from 0, the first to be dimmed. */
    int ofPixel(int pixel) {
        return pixels[pixel];
    }

    /** Where each run of pixels of one rank begins, and, after the last one, where it ends; must not be written to. */
    int[] runs() {
        return runs;
    }

    /** The rank of a dimmer. */
    int ofDimmer(int dimmer) {
        return dimmers[dimmer];
    }

    /** Ranks under construction: those of the canvas's pixels, including plain colour strips, and those of white dimmers. */
    private static final class Canvas {
        private final Fitting fitting;
        private final int[] pixels;
        private final int[] white;

        Canvas(Fitting fitting) {
            this.fitting = fitting;
            pixels = new int[fitting.canvas().rgba().length / 4];
            white = new int[fitting.dimmers().size()];
            Arrays.fill(pixels, NONE);
            Arrays.fill(white, NONE);
        }

        void cover(String name, int rank) {
            Zone zone = fitting.zones().getOrDefault(name, Zone.empty());
            for (int i = 0; i < zone.pixelCount(); i++) {
                pixels[zone.pixel(i)] = rank;
            }
            for (int i = 0; i < white.length; i++) {
                if (fitting.dimmers().get(i).isWhite()
                        && fitting.dimmers().get(i).name().equals(name)) {
                    white[i] = rank;
                }
            }
        }

        Ranks ranks(int uncovered, int count) {
            int[] dimmers = new int[white.length];
            for (int i = 0; i < dimmers.length; i++) {
                Fitting.DimmerUse use = fitting.dimmers().get(i);
                dimmers[i] = orElse(use.isColour() ? pixels[use.colourPixel()] : white[i], uncovered);
            }
            int[] strip = Arrays.stream(pixels, 0, fitting.pixels())
                    .map(rank -> orElse(rank, uncovered))
                    .toArray();
            return new Ranks(strip, dimmers, count);
        }

        private static int orElse(int rank, int uncovered) {
            return rank == NONE ? uncovered : rank;
        }
    }
}
