package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RemediesTest {
    private static PlannedLights rig(int pixels, double loopOhms, int ceiling) {
        return Rigs.of("""
                supply.ceiling_mA = %d
                strip.pixels = %d
                wiring.strip.wire = "20 AWG"
                wiring.strip.length_m = 0.5
                wiring.strip.loop_ohm_per_m = %s
                wiring.strip.pixels_per_m = 10
                """.formatted(ceiling, pixels, loopOhms) + Rigs.IDEAL);
    }

    private static double lowest(StripModel model, PlannedLights rig, List<Integer> points) {
        Wire wire = rig.wiring().strip().feed().wire();
        return model.lowest(model.ladder(
                wire, points.stream().map(pixel -> new Wiring.Point(pixel, 0.5)).toList()));
    }

    /** Compared with every choice of points: none with fewer points is enough. */
    @ParameterizedTest
    @CsvSource({
        "9, 1, 60000, 4.7",
        "10, 2, 60000, 4.7",
        "11, 4, 60000, 4.5",
        "12, 8, 60000, 4.5",
        "12, 3, 400, 4.8",
        "12, 0.5, 300, 4.9",
        "12, 12, 200, 4.5"
    })
    void noFewerPointsDo(int pixels, double loopOhms, int ceiling, double volts) {
        PlannedLights rig = rig(pixels, loopOhms, ceiling);
        StripModel model = new StripModel(rig);
        List<Integer> points = Remedies.of(model, rig, volts).points();
        assertTrue(lowest(model, rig, points) >= volts, points.toString());
        for (int chosen = 1; chosen < 1 << pixels; chosen++) {
            if (Integer.bitCount(chosen) < points.size()) {
                int bits = chosen;
                List<Integer> others = IntStream.range(0, pixels)
                        .filter(i -> (bits >> i & 1) == 1)
                        .boxed()
                        .toList();
                assertTrue(lowest(model, rig, others) < volts, others + " would do instead of " + points);
            }
        }
    }

    @Test
    void endsFirstThenMiddles() {
        assertEquals(List.of(0), Remedies.fromEndToEnd(1, 30));
        assertEquals(List.of(0, 29), Remedies.fromEndToEnd(2, 30));
        assertEquals(List.of(7, 22), Remedies.inTheMiddles(2, 30));
    }

    /**
     * By hand: 30 pixels of 61 mA draw 1.83 A, and 0.5 V may be lost. At 40 °C 4 m resist 0.364 Ω in 24 AWG (84.2 Ω/km) and 0.229 Ω in 22
     * AWG (53.0 Ω/km): 0.67 V and 0.42 V.
     */
    @Test
    void aThickerWireWhereOnlyTheWireIsAtFault() {
        PlannedLights rig = Rigs.of("""
                supply.ceiling_mA = 3000
                strip = { pixels = 30, channel_mA = 20 }
                wiring.strip.wire = "24 AWG"
                wiring.strip.length_m = 2
                wiring.strip.loop_ohm_per_m = 0.01
                wiring.strip.pixels_per_m = 60
                """ + Rigs.IDEAL);
        Remedies remedies = Remedies.of(new StripModel(rig), rig, 4.5);
        assertEquals("22 AWG", remedies.wire().orElseThrow().label());
    }

    @Test
    void whereNothingDoes() {
        PlannedLights rig = rig(10, 2, 60_000);
        Remedies remedies = Remedies.of(new StripModel(rig), rig, 5);
        assertEquals(new Remedies(List.of(), remedies.wire(), remedies.both()), remedies);
        assertTrue(remedies.wire().isEmpty());
    }
}
