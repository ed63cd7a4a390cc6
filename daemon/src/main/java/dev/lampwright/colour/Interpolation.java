package dev.lampwright.colour;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The way from one colour to the next: straight through OKLab, or around the hue circle. Source of the hue rules: CSS Color Module Level 4,
 * "Hue Interpolation".
 */
public enum Interpolation {
    /** Straight through OKLab; opposite hues meet in grey. */
    OKLAB("oklab") {
        @Override
        double turn(double from, double to) {
            return 0;
        }
    },
    /** Around the hue circle by the shorter arc; colourful all the way. */
    OKLCH_SHORTER("oklch shorter") {
        @Override
        double turn(double from, double to) {
            double arc = arc(from, to);
            if (arc > HALF) {
                return arc - FULL;
            }
            return arc < -HALF ? arc + FULL : arc;
        }
    },
    /** Around the hue circle by the longer arc; equal hues make a full turn. */
    OKLCH_LONGER("oklch longer") {
        @Override
        double turn(double from, double to) {
            double arc = arc(from, to);
            if (arc > 0 && arc < HALF) {
                return arc - FULL;
            }
            return arc > -HALF && arc <= 0 ? arc + FULL : arc;
        }
    },
    /** Always from red towards yellow. */
    OKLCH_INCREASING("oklch increasing") {
        @Override
        double turn(double from, double to) {
            double arc = arc(from, to);
            return arc < 0 ? arc + FULL : arc;
        }
    },
    /** Always from red towards blue. */
    OKLCH_DECREASING("oklch decreasing") {
        @Override
        double turn(double from, double to) {
            double arc = arc(from, to);
            return arc > 0 ? arc - FULL : arc;
        }
    };

    private static final double FULL = 360;
    private static final double HALF = 180;

    private final String words;

    Interpolation(String words) {
        this.words = words;
    }

    /**
     * Reads an interpolation.
     *
     * @param text {@code oklab}, {@code oklch} (the shorter arc) or {@code oklch} and {@code shorter}, {@code longer}, {@code increasing}
     *     or {@code decreasing}; case does not count, and the words {@code in} and {@code hue} of CSS may surround it
     * @return the way
     * @throws IllegalArgumentException if it is not valid; the message says what would be
     */
    public static Interpolation parse(String text) {
        String bare = String.join(" ", text.strip().toLowerCase(Locale.ROOT).split("\\s+"));
        String inner = bare.startsWith("in ") ? bare.substring(3) : bare;
        String name = inner.endsWith(" hue") ? inner.substring(0, inner.length() - 4) : inner;
        return Arrays.stream(values())
                .filter(way -> way.words.equals(name.equals("oklch") ? OKLCH_SHORTER.words : name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "\"" + text + "\" is not a way between colours; write one of " + known()));
    }

    /**
     * How far the hue turns.
     *
     * @param from hue in degrees
     * @param to hue in degrees
     * @return degrees to add to the first on the way to the second, above −360 and up to 360
     */
    abstract double turn(double from, double to);

    boolean polar() {
        return this != OKLAB;
    }

    /** The difference once both hues are 0 to 360. */
    static double arc(double from, double to) {
        return within(to) - within(from);
    }

    private static double within(double hue) {
        double rest = hue % FULL;
        return rest < 0 ? rest + FULL : rest;
    }

    private static String known() {
        return Arrays.stream(values()).map(way -> '"' + way.words + '"').collect(Collectors.joining(", "));
    }
}
