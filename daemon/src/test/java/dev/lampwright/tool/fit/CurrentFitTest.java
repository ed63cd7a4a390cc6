package dev.lampwright.tool.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.SupplyDraw;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CurrentFitTest {
    private static final StripModel STRIP = new StripModel("GRB", 60, List.of(11.2, 12.4, 10.6), 0.73);
    private static final CurrentRig RIG = CurrentRig.of(STRIP, 3000);

    private static CurrentFit fit(double[] readings) {
        return CurrentFit.of(
                RIG.setup(), RIG.patterns(), Arrays.stream(readings).boxed().toList());
    }

    @Test
    void findsTheCurrentsOfAStrip() {
        CurrentFit fit = fit(RIG.readings(() -> 0));
        assertTrue(fit.nonsense().isEmpty());
        for (int i = 0; i < 3; i++) {
            assertEquals(
                    STRIP.channelMilliamps().get(i),
                    fit.currents().channels().get(i).value(),
                    1e-9);
        }
        assertEquals(STRIP.idleMilliamps(), fit.currents().idle().value(), 1e-9);
    }

    /** Two standard errors hold the truth about nineteen times in twenty (normal law); with t of two degrees of freedom, fewer. */
    @Test
    void theStandardErrorIsAsLargeAsTheErrorsAre() {
        Random random = new Random(11);
        int rounds = 2000;
        double squares = 0;
        double told = 0;
        for (int round = 0; round < rounds; round++) {
            Findings.Milliamps red = fit(RIG.readings(() -> random.nextGaussian() * 3))
                    .currents()
                    .channels()
                    .get(1);
            squares += Math.pow(red.value() - STRIP.channelMilliamps().get(1), 2) / rounds;
            told += red.error() * red.error() / rounds;
        }
        assertEquals(1, told / squares, 0.15, "mean square of what was told, over mean square of what was wrong");
    }

    @Test
    void noPatternIsOverTheCeilingByTheReckoningBefore() {
        for (int ceiling : new int[] {100, 450, 3000, 20_000}) {
            CurrentRig rig = CurrentRig.of(STRIP, ceiling);
            SupplyDraw draw = new SupplyDraw(rig.setup());
            for (CurrentPattern pattern : rig.patterns()) {
                Frame frame = new Frame(rig.setup().stripBytes(), 0);
                pattern.scene(rig.setup()).draw(0, frame);
                assertTrue(draw.idle(0) + draw.load(0, frame) <= draw.limit(0), pattern.words() + " at " + ceiling);
            }
        }
    }

    @Test
    void refusesAReadingThatDoesNotFit() {
        double[] readings = RIG.readings(() -> 0);
        readings[2] *= 2;
        String nonsense = fit(readings).nonsense().orElseThrow().english();
        assertTrue(nonsense.contains("mA, but the others suggest about"), nonsense);
    }

    @Test
    void refusesAChannelThatTakesNothingOrLessThanNothing() {
        double[] readings = RIG.readings(() -> 0);
        StripModel dead = new StripModel("GRB", 60, List.of(11.2, 0.0, 10.6), 0.73);
        String nonsense = fit(new CurrentRig(dead, RIG.setup(), RIG.patterns()).readings(() -> 0))
                .nonsense()
                .orElseThrow()
                .english();
        assertTrue(nonsense.startsWith("the channel R would take"), nonsense);
        for (int i = 0; i < readings.length; i++) {
            readings[i] = 1000 - readings[i] / 10;
        }
        assertTrue(fit(readings).nonsense().isPresent());
    }

    @Test
    void refusesAChannelThatNoPixelTakes() {
        StripModel strong = new StripModel("GRB", 60, List.of(70.0, 80.0, 90.0), 0.73);
        CurrentRig rig = new CurrentRig(strong, RIG.setup(), RIG.patterns());
        assertTrue(fit(rig.readings(() -> 0)).nonsense().isPresent());
    }

    @Test
    void refusesADarkStripOverTheCeiling() {
        StripModel thirsty = new StripModel("GRB", 60, List.of(11.2, 12.4, 10.6), 60);
        String nonsense = fit(new CurrentRig(thirsty, RIG.setup(), RIG.patterns()).readings(() -> 0))
                .nonsense()
                .orElseThrow()
                .english();
        assertTrue(nonsense.contains("more than the ceiling of 3000 mA"), nonsense);
    }
}
