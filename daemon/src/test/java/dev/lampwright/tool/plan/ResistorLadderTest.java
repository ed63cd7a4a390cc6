package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class ResistorLadderTest {
    private static final double EXACT = 1e-12;

    /** By hand: 0.2 A through the wire of 1 Ω leave 4.8 V; 0.1 A through the segment of 1 Ω leave 4.7 V. */
    @Test
    void twoPixelsOnOneWire() {
        ResistorLadder ladder = new ResistorLadder(5, 2, 1, Map.of(0, 1.0));
        assertArrayEquals(new double[] {4.8, 4.7}, ladder.volts(new double[] {0.1, 0.1}), EXACT);
    }

    /** By hand, by symmetry: 0.15 A in each wire of 1 Ω, 0.05 A in each segment of 1 Ω. */
    @Test
    void threePixelsBetweenTwoWires() {
        ResistorLadder ladder = new ResistorLadder(5, 3, 1, Map.of(0, 1.0, 2, 1.0));
        double[] amps = {0.1, 0.1, 0.1};
        assertArrayEquals(new double[] {4.85, 4.8, 4.85}, ladder.volts(amps), EXACT);
        assertEquals(0.15, ladder.wireAmps(2, ladder.drops(amps)), EXACT);
    }

    /**
     * By hand: wires of 1 Ω at pixel 0 and 3 Ω at pixel 1, segment of 2 Ω, 1 A at pixel 1 only. The ways to it are 1 + 2 = 3 Ω and
     * 3 Ω, so 0.5 A each and a drop of 1.5 V; at pixel 0 the drop is 0.5 V.
     */
    @Test
    void wiresOfDifferentLength() {
        ResistorLadder ladder = new ResistorLadder(5, 2, 2, Map.of(0, 1.0, 1, 3.0));
        assertArrayEquals(new double[] {4.5, 3.5}, ladder.volts(new double[] {0, 1}), EXACT);
    }

    @Test
    void onePixel() {
        assertArrayEquals(
                new double[] {3}, new ResistorLadder(5, 1, 1, Map.of(0, 4.0)).volts(new double[] {0.5}), EXACT);
    }

    /** A distributed load: I·R ÷ 2 is lost along a conductor of even load that is fed at one end (any textbook of installation). */
    @Test
    void anEvenLoadLosesHalfOfItAll() {
        int pixels = 10_000;
        double total = 2;
        double ohms = 0.5;
        ResistorLadder ladder = new ResistorLadder(5, pixels, ohms / pixels, Map.of(0, 1e-9));
        double[] amps = new double[pixels];
        Arrays.fill(amps, total / pixels);
        assertEquals(total * ohms / 2, ladder.drops(amps)[pixels - 1], 1e-3);
    }

    /** Kirchhoff's equations of a hundred random ladders, solved by LU decomposition in Apache Commons Math. */
    @Test
    void asALibraryOfLinearAlgebraSolvesIt() {
        Random random = new Random(7);
        for (int round = 0; round < 100; round++) {
            int pixels = 1 + random.nextInt(60);
            double segmentOhms = 0.001 + random.nextDouble();
            Map<Integer, Double> wires = new TreeMap<>();
            for (int i = 0; i <= random.nextInt(5); i++) {
                wires.put(random.nextInt(pixels), 0.01 + random.nextDouble());
            }
            double[] amps = random.doubles(pixels, 0, 0.06).toArray();
            double[] drops = new ResistorLadder(5, pixels, segmentOhms, wires).drops(amps);
            double[] library = new LUDecomposition(nodes(pixels, 1 / segmentOhms, wires))
                    .getSolver()
                    .solve(new ArrayRealVector(amps))
                    .toArray();
            assertArrayEquals(
                    library, drops, 1e-9 * (1 + Arrays.stream(library).max().orElse(0)));
        }
    }

    private static RealMatrix nodes(int pixels, double segment, Map<Integer, Double> wires) {
        RealMatrix nodes = new Array2DRowRealMatrix(pixels, pixels);
        wires.forEach((pixel, ohms) -> nodes.addToEntry(pixel, pixel, 1 / ohms));
        for (int i = 0; i + 1 < pixels; i++) {
            nodes.addToEntry(i, i, segment);
            nodes.addToEntry(i + 1, i + 1, segment);
            nodes.addToEntry(i, i + 1, -segment);
            nodes.addToEntry(i + 1, i, -segment);
        }
        return nodes;
    }

    /** Kirchhoff's current law for the whole strip: the wires deliver what the pixels draw. */
    @Test
    void nothingIsLostOfTheCurrent() {
        ResistorLadder ladder = new ResistorLadder(5, 50, 0.007, Map.of(3, 0.1, 20, 0.3, 49, 0.2));
        double[] amps = new Random(3).doubles(50, 0, 0.06).toArray();
        double[] drops = ladder.drops(amps);
        double brought = ladder.wireAmps(3, drops) + ladder.wireAmps(20, drops) + ladder.wireAmps(49, drops);
        assertEquals(Arrays.stream(amps).sum(), brought, EXACT);
        assertEquals(0, ladder.wireAmps(4, drops));
    }

    /** Reciprocity of passive networks. */
    @Test
    void whatOneCostsAnotherTheOtherCostsIt() {
        ResistorLadder ladder = new ResistorLadder(5, 9, 0.3, Map.of(1, 0.5, 6, 1.5));
        for (int i = 0; i < 9; i++) {
            for (int k = 0; k < 9; k++) {
                assertEquals(ladder.ohmsTo(i)[k], ladder.ohmsTo(k)[i], EXACT);
            }
        }
    }
}
