package dev.lampwright.guard;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import java.util.Arrays;

/**
 * Keeps each supply under its ceiling. A frame that demands too much is dimmed before it is sent, rank by rank: the lowest until it is
 * dark, then the next, and the highest last. Afterwards the light rises again gently, as {@link Recovery} says. Calculates in whole numbers
 * from the exact bytes that are sent, and rounds only down. Allocates nothing.
 */
public final class CurrentGuard {
    private final SupplyDraw draw;
    private final Ranks ranks;
    private final int channels;
    private final long[][] loads;
    private final long[][] factors;
    private final Recovery[][] recoveries;
    private final long[] grains;
    private long dimmedFrames;
    private boolean dimmed;
    private boolean isSteady;

    /**
     * Creates a guard.
     *
     * @param setup what is fitted, and the ceilings
     * @param ranks in which order lights are dimmed, for the same pixels and dimmers
     * @param framesPerSecond rate of the frames, 1 or more
     * @param riseSeconds how long dimmed light takes from dark to full once it is allowed, above 0
     * @throws IllegalArgumentException if the rate or the time is out of its range
     */
    public CurrentGuard(Setup setup, Ranks ranks, int framesPerSecond, double riseSeconds) {
        draw = new SupplyDraw(setup);
        this.ranks = ranks;
        channels = setup.channels();
        loads = new long[draw.supplies()][ranks.count()];
        factors = new long[draw.supplies()][ranks.count()];
        recoveries = new Recovery[draw.supplies()][ranks.count()];
        for (Recovery[] supply : recoveries) {
            Arrays.setAll(supply, rank -> new Recovery(framesPerSecond, riseSeconds));
        }
        grains = new long[draw.supplies()];
    }

    /**
     * Dims a frame that demands more than a supply may deliver.
     *
     * @param frame the frame about to be sent; afterwards no supply is over its ceiling, unless the dark strip alone is: then everything on
     *     that supply is dark
     */
    public void hold(Frame frame) {
        weighRanks(frame);
        boolean dims = false;
        dimmed = false;
        isSteady = true;
        for (int supply = 0; supply < loads.length; supply++) {
            need(supply);
            for (int rank = 0; rank < factors[supply].length; rank++) {
                long needed = factors[supply][rank];
                factors[supply][rank] = recoveries[supply][rank].next(needed);
                isSteady &= factors[supply][rank] == needed;
                boolean below = factors[supply][rank] < SupplyDraw.WHOLE;
                dims |= below;
                dimmed |= below && loads[supply][rank] > 0;
            }
        }
        if (dims) {
            dim(frame);
        }
        dimmedFrames += dimmed ? 1 : 0;
        if (dims) {
            weigh(frame);
        } else {
            weighLoads();
        }
    }

    /** Whether the last frame would be dimmed in the same way again, because no light is rising. */
    boolean isSteady() {
        return isSteady;
    }

    /** Passes a frame that demands the same as the last, while this {@link #isSteady}. */
    void pass() {
        for (Recovery[] supply : recoveries) {
            for (Recovery recovery : supply) {
                recovery.pass();
            }
        }
        dimmedFrames += dimmed ? 1 : 0;
    }

    /**
     * Whether a frame may be sent.
     *
     * @param frame a frame of the set-up's size
     * @return true if no supply is over its ceiling, or what is on it is dark
     */
    boolean allows(Frame frame) {
        for (int supply = 0; supply < loads.length; supply++) {
            long load = draw.load(supply, frame);
            if (load > 0 && draw.idle(supply) + load > draw.limit(supply)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Records what a frame draws.
     *
     * @param frame the frame that is sent
     */
    void weigh(Frame frame) {
        for (int supply = 0; supply < grains.length; supply++) {
            grains[supply] = draw.idle(supply) + draw.load(supply, frame);
        }
    }

    /**
     * What the last frame draws from a supply.
     *
     * @param supply its index
     * @return mA, rounded up
     */
    public int milliamps(int supply) {
        return (int) ((grains[supply] + SupplyDraw.GRAINS_PER_MILLIAMP - 1) / SupplyDraw.GRAINS_PER_MILLIAMP);
    }

    /**
     * How many frames were sent darker than requested because of a ceiling: those that demanded too much, and those in the ten seconds and
     * the slow rise afterwards.
     *
     * @return frames since the start
     */
    public long dimmedFrames() {
        return dimmedFrames;
    }

    /**
     * By how much the dark strip alone is over the ceiling of its supply. While it is, everything on that supply stays dark.
     *
     * @return mA, rounded up; 0 if it is within
     */
    public int darkOverMilliamps() {
        long over = draw.idle(draw.stripSupply()) - draw.limit(draw.stripSupply());
        return (int) ((Math.max(0, over) + SupplyDraw.GRAINS_PER_MILLIAMP - 1) / SupplyDraw.GRAINS_PER_MILLIAMP);
    }

    private void weighRanks(Frame frame) {
        for (long[] supply : loads) {
            Arrays.fill(supply, 0);
        }
        long[] strip = loads[draw.stripSupply()];
        int[] runs = ranks.runs();
        for (int run = 0; run + 1 < runs.length; run++) {
            strip[ranks.ofPixel(runs[run])] += load(frame.strip(), runs[run], runs[run + 1]);
        }
        int[] duties = frame.duties();
        for (int i = 0; i < duties.length; i++) {
            loads[draw.supplyOf(i)][ranks.ofDimmer(i)] += duties[i] * draw.grainsPerDutyStep(i);
        }
    }

    /** What pixels draw, from one up to but excluding another, in grains. */
    private long load(byte[] bytes, int from, int to) {
        long load = 0;
        for (int channel = 0; channel < channels; channel++) {
            int steps = 0;
            for (int at = channels * from + channel; at < channels * to; at += channels) {
                steps += bytes[at] & 0xFF;
            }
            load += steps * draw.grainsPerStep(channel);
        }
        return load;
    }

    /** Records what a frame with known loads draws. */
    private void weighLoads() {
        for (int supply = 0; supply < grains.length; supply++) {
            grains[supply] = draw.idle(supply);
            for (long load : loads[supply]) {
                grains[supply] += load;
            }
        }
    }

    /** Calculates the factors that this frame needs: the highest rank gets what it demands, the next what is left, and so on. */
    private void need(int supply) {
        long room = draw.limit(supply) - draw.idle(supply);
        if (room < 0) {
            Arrays.fill(factors[supply], 0);
            return;
        }
        for (int rank = factors[supply].length - 1; rank >= 0; rank--) {
            long load = loads[supply][rank];
            factors[supply][rank] = load <= room ? SupplyDraw.WHOLE : room * SupplyDraw.WHOLE / load;
            room -= Math.min(load, room);
        }
    }

    private void dim(Frame frame) {
        long[] strip = factors[draw.stripSupply()];
        byte[] bytes = frame.strip();
        for (int pixel = 0, at = 0; at < bytes.length; pixel++) {
            long factor = strip[ranks.ofPixel(pixel)];
            for (int channel = 0; channel < channels; channel++, at++) {
                bytes[at] = (byte) (((bytes[at] & 0xFF) * factor) >> 16);
            }
        }
        int[] duties = frame.duties();
        for (int i = 0; i < duties.length; i++) {
            duties[i] = (int) ((duties[i] * factors[draw.supplyOf(i)][ranks.ofDimmer(i)]) >> 16);
        }
    }
}
