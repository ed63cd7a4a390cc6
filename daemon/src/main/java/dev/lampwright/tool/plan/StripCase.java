package dev.lampwright.tool.plan;

import java.util.Arrays;

/** The strip at one load: the voltage at each pixel. */
public final class StripCase {
    private final String name;
    private final double totalAmps;
    private final double[] volts;

    StripCase(String name, double[] amps, ResistorLadder ladder) {
        this.name = name;
        totalAmps = Arrays.stream(amps).sum();
        volts = ladder.volts(amps);
    }

    /**
     * The name of the load.
     *
     * @return a few words
     */
    public String name() {
        return name;
    }

    /**
     * What the whole strip draws.
     *
     * @return A
     */
    public double totalAmps() {
        return totalAmps;
    }

    /**
     * Voltage at each pixel.
     *
     * @return V, pixel 0 first; a copy
     */
    public double[] volts() {
        return volts.clone();
    }

    /**
     * The lowest voltage.
     *
     * @return V
     */
    public double lowest() {
        return volts[lowestAt()];
    }

    /**
     * Where it is lowest.
     *
     * @return the pixel
     */
    public int lowestAt() {
        int at = 0;
        for (int i = 1; i < volts.length; i++) {
            at = volts[i] < volts[at] ? i : at;
        }
        return at;
    }

    /**
     * The first pixel below a voltage.
     *
     * @param least V
     * @return the pixel; −1 if there is none
     */
    public int firstBelow(double least) {
        for (int i = 0; i < volts.length; i++) {
            if (volts[i] < least) {
                return i;
            }
        }
        return -1;
    }

    /**
     * How many pixels are below a voltage.
     *
     * @param least V
     * @return pixels
     */
    public int countBelow(double least) {
        return (int) Arrays.stream(volts).filter(v -> v < least).count();
    }
}
