package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SupplyDrawTest {
    private static final BigInteger GRAIN_PER_MICROAMP = BigInteger.valueOf(65_535);

    private final SplittableRandom chance = new SplittableRandom(7);

    /** The example that {@code wire.md} calculates by hand. */
    @Test
    void agreesWithTheWorkedExample() {
        Setup setup = new Setup(
                2, "GRB", List.of(12_000, 12_000, 12_000), 1000, 0, 3000, WhenSilent.BEACON, List.of(50), List.of());
        SupplyDraw draw = new SupplyDraw(setup);
        Frame white = new Frame(6, 0);
        Arrays.fill(white.strip(), (byte) 255);
        assertEquals(131_070_000L, draw.idle(0));
        assertEquals(4_718_520_000L, draw.load(0, white));
        assertEquals(3_276_750_000L, draw.limit(0));
        long factor = draw.factor(0, draw.load(0, white));
        assertEquals(43_690, factor);
        draw.dim(0, factor, white);
        assertEquals(169, white.strip()[0] & 0xFF);
    }

    /** wire.md, section 4: 257 grains for each µA and step of a byte, 1000 for each mA and step of a duty. */
    @Test
    void tellsWhatHangsOnWhichSupplyAndWhatAStepTakes() {
        SupplyDraw draw = new SupplyDraw(new Setup(
                2,
                "GRB",
                List.of(12_000, 11_000, 10_000),
                1000,
                1,
                3000,
                WhenSilent.BEACON,
                List.of(4000, 50),
                List.of(new Setup.Dimmer(1, 800, 0), new Setup.Dimmer(0, 400, 0))));
        assertEquals(2, draw.supplies());
        assertEquals(1, draw.stripSupply());
        assertEquals(1, draw.supplyOf(0));
        assertEquals(0, draw.supplyOf(1));
        assertEquals(11_000 * 257, draw.grainsPerStep(1));
        assertEquals(800_000, draw.grainsPerDutyStep(0));
        assertEquals(0, draw.idle(0));
    }

    /** Any frame, order, currents and ceiling, recalculated as an exact fraction. */
    @Test
    void nothingDimmedIsEverOverTheCeiling() {
        for (int trial = 0; trial < 20_000; trial++) {
            Setup setup = someSetup();
            Frame frame = someFrame(setup);
            SupplyDraw draw = new SupplyDraw(setup);
            for (int supply = 0; supply < draw.supplies(); supply++) {
                BigInteger before = exactGrains(setup, frame, supply);
                assertEquals(before, BigInteger.valueOf(draw.idle(supply) + draw.load(supply, frame)));
                long factor = draw.factor(supply, draw.load(supply, frame));
                draw.dim(supply, factor, frame);
                BigInteger after = exactGrains(setup, frame, supply);
                boolean darkIsTooMuch = draw.idle(supply) > draw.limit(supply);
                BigInteger bound = BigInteger.valueOf(darkIsTooMuch ? draw.idle(supply) : draw.limit(supply));
                assertTrue(after.compareTo(bound) <= 0, "trial " + trial);
                assertEquals(before.compareTo(BigInteger.valueOf(draw.limit(supply))) <= 0, factor == SupplyDraw.WHOLE);
            }
        }
    }

    /** Σ duty × current as an exact fraction, in 1/65535 µA: a byte is out of 255, a duty out of 65535. */
    private static BigInteger exactGrains(Setup setup, Frame frame, int supply) {
        BigInteger grains = BigInteger.ZERO;
        if (supply == setup.stripSupply()) {
            grains = GRAIN_PER_MICROAMP
                    .multiply(BigInteger.valueOf(setup.pixels()))
                    .multiply(BigInteger.valueOf(setup.darkMicroamps()));
            for (int i = 0; i < frame.strip().length; i++) {
                long microamps = setup.channelMicroamps().get(i % setup.channels());
                long byteValue = frame.strip()[i] & 0xFF;
                grains = grains.add(GRAIN_PER_MICROAMP
                        .multiply(BigInteger.valueOf(microamps * byteValue))
                        .divide(BigInteger.valueOf(255)));
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

    private Setup someSetup() {
        List<String> letters =
                new ArrayList<>(chance.nextBoolean() ? List.of("R", "G", "B") : List.of("R", "G", "B", "W"));
        Collections.shuffle(letters, new Random(chance.nextLong()));
        int supplies = 1 + chance.nextInt(4);
        int mostCurrent = chance.nextBoolean() ? 65_535 : 20_000;
        List<Setup.Dimmer> dimmers = Stream.generate(
                        () -> new Setup.Dimmer(chance.nextInt(supplies), chance.nextInt(65_536), 0))
                .limit(chance.nextInt(7))
                .toList();
        return new Setup(
                chance.nextInt(60),
                String.join("", letters),
                Stream.generate(() -> chance.nextInt(mostCurrent))
                        .limit(letters.size())
                        .toList(),
                chance.nextInt(2000),
                chance.nextInt(supplies),
                3000,
                WhenSilent.DARK,
                Stream.generate(() -> chance.nextInt(chance.nextBoolean() ? 65_536 : 500))
                        .limit(supplies)
                        .toList(),
                dimmers);
    }

    private Frame someFrame(Setup setup) {
        Frame frame = new Frame(setup.stripBytes(), setup.dimmers().size());
        boolean bright = chance.nextBoolean();
        for (int i = 0; i < frame.strip().length; i++) {
            frame.strip()[i] = (byte) (bright ? 255 - chance.nextInt(20) : chance.nextInt(256));
        }
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = bright ? 65_535 : chance.nextInt(65_536);
        }
        return frame;
    }
}
