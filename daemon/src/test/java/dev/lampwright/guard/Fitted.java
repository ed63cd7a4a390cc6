package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/**
 * Strips and dimmers for tests, and an exact calculation of what they draw that shares nothing with the guard's.
 *
 * @param setup what is fitted
 * @param fitting the zones on it
 */
record Fitted(Setup setup, Fitting fitting) {
    private static final BigInteger GRAIN_PER_MICROAMP = BigInteger.valueOf(65_535);
    private static final String[] NAMES = {"bed", "nozzle", "job", "glow"};

    /** A strip in the order RGB without dimmers, with the highest possible ceiling. */
    static Fitted strip(int pixels, Map<String, Zone> zones) {
        return strip(pixels, 65_535, zones);
    }

    /** A strip in the order RGB without dimmers, 12 mA per channel and 1 mA dark. */
    static Fitted strip(int pixels, int ceilingMilliamps, Map<String, Zone> zones) {
        Setup setup = new Setup(
                pixels,
                "RGB",
                List.of(12_000, 12_000, 12_000),
                1000,
                0,
                3000,
                WhenSilent.DARK,
                List.of(ceilingMilliamps),
                List.of());
        return new Fitted(setup, new Fitting(pixels, zones, List.of()));
    }

    /** Anything at all: orders, currents, supplies, ceilings below idle too, zones that overlap, plain strips, white lights. */
    static Fitted any(SplittableRandom chance) {
        int pixels = 1 + chance.nextInt(40);
        int supplies = 1 + chance.nextInt(4);
        List<Fitting.DimmerUse> uses = new ArrayList<>();
        Map<String, Zone> zones = new LinkedHashMap<>();
        zones.put("strip", Zone.run(0, pixels - 1));
        for (String name : NAMES) {
            zones.put(name, Zone.run(chance.nextInt(pixels), chance.nextInt(pixels)));
        }
        if (chance.nextBoolean()) {
            uses.add(Fitting.DimmerUse.white("work"));
        }
        if (chance.nextBoolean()) {
            zones.put("plain", Zone.run(pixels, pixels));
            for (int channel : new int[] {2, 0, 1}) {
                uses.add(new Fitting.DimmerUse("cove", pixels, channel));
            }
        }
        return new Fitted(setup(chance, pixels, supplies, uses.size()), new Fitting(pixels, zones, uses));
    }

    private static Setup setup(SplittableRandom chance, int pixels, int supplies, int dimmers) {
        List<String> letters =
                new ArrayList<>(chance.nextBoolean() ? List.of("R", "G", "B") : List.of("R", "G", "B", "W"));
        Collections.shuffle(letters, new Random(chance.nextLong()));
        return new Setup(
                pixels,
                String.join("", letters),
                Stream.generate(() -> chance.nextInt(chance.nextBoolean() ? 65_536 : 20_000))
                        .limit(letters.size())
                        .toList(),
                chance.nextInt(2000),
                chance.nextInt(supplies),
                3000,
                WhenSilent.DARK,
                Stream.generate(() -> chance.nextInt(chance.nextInt(4) == 0 ? 65_536 : 2000))
                        .limit(supplies)
                        .toList(),
                Stream.generate(() -> new Setup.Dimmer(chance.nextInt(supplies), chance.nextInt(3000), 0))
                        .limit(dimmers)
                        .toList());
    }

    /** Some of the names of zones and dimmers, in some order. */
    static List<String> anyOrder(SplittableRandom chance) {
        List<String> names = new ArrayList<>(List.of("strip", "bed", "nozzle", "job", "glow", "work", "plain"));
        Collections.shuffle(names, new Random(chance.nextLong()));
        return names.subList(0, chance.nextInt(names.size() + 1));
    }

    /** A dark frame of this size. */
    Frame frame() {
        return new Frame(setup.stripBytes(), setup.dimmers().size());
    }

    /** A frame with every byte and every duty at one level, 0 to 255. */
    Frame filled(int level) {
        Frame frame = frame();
        Arrays.fill(frame.strip(), (byte) level);
        Arrays.fill(frame.duties(), 257 * level);
        return frame;
    }

    /** Whether no supply delivers more than its ceiling; a dark supply may deliver what the dark strip draws. */
    boolean isUnderTheCeilings(Frame frame) {
        for (int supply = 0; supply < setup.ceilingsMilliamps().size(); supply++) {
            BigInteger limit = GRAIN_PER_MICROAMP.multiply(
                    BigInteger.valueOf(1000L * setup.ceilingsMilliamps().get(supply)));
            BigInteger dark = exactGrains(frame(), supply);
            if (exactGrains(frame, supply).compareTo(limit.max(dark)) > 0) {
                return false;
            }
        }
        return true;
    }

    /** Σ duty × current as an exact fraction, in 1/65535 µA: a byte is a share of 255, a duty one of 65535. */
    BigInteger exactGrains(Frame frame, int supply) {
        BigInteger grains = BigInteger.ZERO;
        for (int i = 0; supply == setup.stripSupply() && i < frame.strip().length; i++) {
            int channel = i % setup.channels();
            long microamps = (long) setup.channelMicroamps().get(channel) * (frame.strip()[i] & 0xFF);
            BigInteger full = GRAIN_PER_MICROAMP.multiply(BigInteger.valueOf(microamps));
            grains = grains.add(full.divide(BigInteger.valueOf(255)));
            if (channel == 0) {
                grains = grains.add(GRAIN_PER_MICROAMP.multiply(BigInteger.valueOf(setup.darkMicroamps())));
            }
        }
        for (int i = 0; i < setup.dimmers().size(); i++) {
            Setup.Dimmer dimmer = setup.dimmers().get(i);
            if (dimmer.supply() == supply) {
                grains = grains.add(BigInteger.valueOf(1000L * dimmer.fullMilliamps() * frame.duties()[i]));
            }
        }
        return grains;
    }
}
