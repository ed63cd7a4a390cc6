package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Light that tries to flash in one of the possible ways.
 *
 * @param kind the way
 * @param pixels pixels of the strip
 * @param rate frames per second
 * @param grain how many adjacent pixels do the same
 * @param offset where the first grain starts
 * @param period frames between two changes
 * @param first one colour, red, green and blue of 255
 * @param second the other
 * @param seed of everything random
 */
record RestlessLight(
        Kind kind, int pixels, int rate, int grain, int offset, int period, Rgb first, Rgb second, long seed) {
    /** Voltage of each supply. */
    static final List<Double> VOLTS = List.of(5.0, 24.0);

    private static final int FULL = 65_535;
    private static final int LAMP = 0;

    /** A colour, 0 to 255 each. */
    record Rgb(int red, int green, int blue) {
        Rgb times(double level) {
            double held = Math.max(0, Math.min(1, level));
            return new Rgb((int) (red * held), (int) (green * held), (int) (blue * held));
        }
    }

    /** A way to flash. */
    enum Kind {
        /** Grains in opposite phases, so the mean of many never moves. */
        OPPOSITE,
        /** Red that turns on and off next to steady white. */
        RED_BESIDE_WHITE,
        /** Strip and lamp in turn. */
        STRIP_AGAINST_LAMP,
        /** A quick ripple on a slow rise and fall. */
        RIPPLE_ON_DRIFT,
        /** Up in steps that count, and down. */
        STAIRS,
        /** A band that runs along. */
        CHASE,
        /** Any pixels in any colour, twenty times a second. */
        ASKS,
        /** A different picture ten times a second. */
        STATES,
        /** Every byte at random. */
        NOISE
    }

    /** What it is shown on: a strip of 12 mA per channel and a lamp of 24 V. */
    Setup setup() {
        return new Setup(
                pixels,
                "GRB",
                List.of(12_000, 12_000, 12_000),
                1000,
                0,
                3000,
                WhenSilent.DARK,
                List.of(65_535, 2000),
                List.of(new Setup.Dimmer(1, 400, 0)));
    }

    /** Overlapping zones chosen by a seed. */
    Fitting fitting(long zonesSeed) {
        SplittableRandom chance = new SplittableRandom(zonesSeed);
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put("bed", Zone.run(chance.nextInt(pixels), chance.nextInt(pixels)));
        zones.put("job", Zone.run(chance.nextInt(pixels), chance.nextInt(pixels)));
        return new Fitting(pixels, zones, List.of(Fitting.DimmerUse.white("work")));
    }

    /** Draws the light of a tick. */
    void draw(int tick, Frame frame) {
        int turn = tick / period;
        switch (kind) {
            case OPPOSITE -> eachPixel(frame, pixel -> ((pixel + offset) / grain + turn) % 2 == 0 ? first : second);
            case RED_BESIDE_WHITE ->
                eachPixel(
                        frame,
                        pixel -> (pixel + offset) % 8 >= Math.min(grain, 7)
                                ? new Rgb(64, 64, 64)
                                : new Rgb(turn % 2 * Math.max(20, first.red()), 0, 0));
            case STRIP_AGAINST_LAMP -> {
                eachPixel(frame, pixel -> turn % 2 == 0 ? first : second);
                frame.duties()[LAMP] = (tick + period * offset / 32) / period % 2 == 0 ? FULL : 0;
            }
            case RIPPLE_ON_DRIFT -> {
                double drift = 0.5 + 0.5 * Math.sin(2 * Math.PI * tick / rate * (0.1 + offset / 32.0));
                double ripple = turn % 2 == 0 ? 0 : 0.02 + grain / 100.0;
                eachPixel(frame, pixel -> first.times(drift + ripple));
                frame.duties()[LAMP] = (int) (FULL * drift);
            }
            case STAIRS -> eachPixel(frame, pixel -> first.times(turn % (grain % 4 + 2) * 0.11));
            case CHASE ->
                eachPixel(frame, pixel -> Math.floorMod(pixel + offset - turn, 2 * grain) < grain ? first : second);
            case ASKS -> asks(tick, frame);
            case STATES -> noise(frame, new SplittableRandom(seed + tick * 10L / rate % 4));
            case NOISE -> noise(frame, new SplittableRandom(seed + tick));
        }
    }

    private interface Picture {
        Rgb at(int pixel);
    }

    private void eachPixel(Frame frame, Picture picture) {
        for (int pixel = 0; pixel < pixels; pixel++) {
            put(frame, pixel, picture.at(pixel));
        }
    }

    /** Earlier asks stay, so the last few are drawn over each other. */
    private void asks(int tick, Frame frame) {
        int newest = tick * 20 / rate;
        for (int ask = Math.max(0, newest - 5); ask <= newest; ask++) {
            SplittableRandom chance = new SplittableRandom(seed + ask);
            int from = chance.nextInt(pixels);
            int to = Math.min(pixels, from + 1 + chance.nextInt(grain));
            Rgb colour = chance.nextBoolean() ? first : second;
            for (int pixel = from; pixel < to; pixel++) {
                put(frame, pixel, colour);
            }
            frame.duties()[LAMP] = chance.nextBoolean() ? FULL : 0;
        }
    }

    private void noise(Frame frame, SplittableRandom chance) {
        chance.nextBytes(frame.strip());
        frame.duties()[LAMP] = chance.nextInt(FULL + 1);
    }

    private static void put(Frame frame, int pixel, Rgb colour) {
        frame.strip()[3 * pixel] = (byte) colour.green();
        frame.strip()[3 * pixel + 1] = (byte) colour.red();
        frame.strip()[3 * pixel + 2] = (byte) colour.blue();
    }
}
