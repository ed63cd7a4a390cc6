package dev.lampwright.tool.plan;

import java.util.Arrays;
import java.util.Map;

/**
 * The strip as a network: pixels that draw constant currents are connected between two conductors with resistance, and wires from the
 * supply join these at some pixels. Both conductors are combined, there and back, so a single row of nodes remains. Kirchhoff's current law
 * at pixel i, with the drop d from the supply's voltage, segments of conductance g and the wire's conductance w (0 where none joins):
 *
 * <pre>w[i]·d[i] + g·(d[i] − d[i−1]) + g·(d[i] − d[i+1]) = current[i]</pre>
 *
 * <p>Solved exactly by folding the ladder up from its near end, and unfolding it from the far end. Takes time proportional to the number of
 * pixels.
 */
final class ResistorLadder {
    private final double volts;
    private final double segment;
    private final double[] wires;
    /** Conductance from each pixel to the supply through its own wire and everything on its near side. */
    private final double[] near;

    /**
     * Creates a ladder.
     *
     * @param volts voltage of the supply
     * @param pixels pixels of the strip, 1 or more
     * @param segmentOhms resistance between neighbours, both conductors together, in Ω, above 0
     * @param wireOhms for each pixel where a wire joins, its resistance there and back, in Ω, above 0; one at least
     */
    ResistorLadder(double volts, int pixels, double segmentOhms, Map<Integer, Double> wireOhms) {
        this.volts = volts;
        segment = 1 / segmentOhms;
        wires = new double[pixels];
        wireOhms.forEach((pixel, ohms) -> wires[pixel] = 1 / ohms);
        near = folded(wires, segment);
    }

    /**
     * Voltage of the supply.
     *
     * @return V
     */
    double volts() {
        return volts;
    }

    /**
     * Voltage at each pixel.
     *
     * @param amps what each pixel draws, in A
     * @return V; below 0 if the network cannot carry such currents at all
     */
    double[] volts(double[] amps) {
        return Arrays.stream(drops(amps)).map(drop -> volts - drop).toArray();
    }

    /**
     * The voltage lost on the way to each pixel.
     *
     * @param amps what each pixel draws, in A
     * @return V
     */
    double[] drops(double[] amps) {
        int last = amps.length - 1;
        double[] drops = new double[amps.length];
        double carried = 0;
        for (int i = 0; i <= last; i++) {
            carried = amps[i] + (i == 0 ? 0 : carried * segment / (segment + near[i - 1]));
            drops[i] = carried;
        }
        drops[last] /= near[last];
        for (int i = last - 1; i >= 0; i--) {
            drops[i] = (drops[i] + segment * drops[i + 1]) / (segment + near[i]);
        }
        return drops;
    }

    /**
     * The voltage that 1 A drawn at one pixel costs each pixel; by reciprocity also what 1 A drawn at each pixel costs that one.
     *
     * @param pixel where
     * @return Ω for each pixel
     */
    double[] ohmsTo(int pixel) {
        double[] amps = new double[wires.length];
        amps[pixel] = 1;
        return drops(amps);
    }

    /**
     * Current of a wire.
     *
     * @param pixel where it joins
     * @param drops as returned by {@link #drops}
     * @return A
     */
    double wireAmps(int pixel, double[] drops) {
        return siemens(pixel) * drops[pixel];
    }

    /**
     * How a wire's current is made up.
     *
     * @param pixel where it joins
     * @return for each pixel, which share of its current comes through that wire, 0 to 1
     */
    double[] wireShares(int pixel) {
        return Arrays.stream(ohmsTo(pixel)).map(ohms -> siemens(pixel) * ohms).toArray();
    }

    /**
     * How the current between two neighbours is made up.
     *
     * @param pixel the one on the near side
     * @return for each pixel, which share of its current flows there, −1 to 1; positive away from the near end
     */
    double[] segmentShares(int pixel) {
        double[] here = ohmsTo(pixel);
        double[] next = ohmsTo(pixel + 1);
        double[] shares = new double[here.length];
        Arrays.setAll(shares, i -> segment * (next[i] - here[i]));
        return shares;
    }

    /**
     * Conductance of a wire.
     *
     * @param pixel where it joins
     * @return S; 0 where none joins
     */
    double siemens(int pixel) {
        return wires[pixel];
    }

    private static double[] folded(double[] wires, double segment) {
        double[] near = new double[wires.length];
        for (int i = 0; i < near.length; i++) {
            near[i] = wires[i] + (i == 0 ? 0 : segment * near[i - 1] / (segment + near[i - 1]));
        }
        return near;
    }
}
