package dev.lampwright.guard;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import java.util.Arrays;

/**
 * Keeps each supply under its ceiling. A frame that asks for too much is dimmed before it leaves, all of it alike; afterwards the
 * light comes up again gently, so that a look that goes in and out of the limit does not pump. Allocates nothing.
 */
public final class CurrentGuard {
    /** How long the light takes from dark to full once it may. */
    private static final double RISE_SECONDS = 2.0;

    private final SupplyDraw draw;
    private final long[] factors;
    private final long[] grains;
    private final long rise;
    private long dimmedFrames;

    /**
     * Makes a guard.
     *
     * @param setup what is fitted, and the ceilings
     * @param framesPerSecond rate of the frames
     */
    public CurrentGuard(Setup setup, int framesPerSecond) {
        draw = new SupplyDraw(setup);
        factors = new long[draw.supplies()];
        grains = new long[draw.supplies()];
        Arrays.fill(factors, SupplyDraw.WHOLE);
        rise = Math.max(1, (long) (SupplyDraw.WHOLE / (RISE_SECONDS * framesPerSecond)));
    }

    /**
     * Dims a frame where it asks for more than a supply may give.
     *
     * @param frame the frame about to leave; afterwards no supply is over its ceiling, unless the dark strip alone is: then it is dark
     */
    public void hold(Frame frame) {
        boolean dimmed = false;
        for (int supply = 0; supply < factors.length; supply++) {
            long load = draw.load(supply, frame);
            long needed = draw.factor(supply, load);
            factors[supply] = Math.min(needed, factors[supply] + rise);
            if (factors[supply] < SupplyDraw.WHOLE) {
                draw.dim(supply, factors[supply], frame);
                load = draw.load(supply, frame);
            }
            dimmed |= needed < SupplyDraw.WHOLE;
            grains[supply] = draw.idle(supply) + load;
        }
        dimmedFrames += dimmed ? 1 : 0;
    }

    /**
     * What the last frame takes from a supply.
     *
     * @param supply its index
     * @return mA, rounded up
     */
    public int milliamps(int supply) {
        return (int) ((grains[supply] + SupplyDraw.GRAINS_PER_MILLIAMP - 1) / SupplyDraw.GRAINS_PER_MILLIAMP);
    }

    /**
     * How many frames have asked for more than a supply may give.
     *
     * @return frames since the start
     */
    public long dimmedFrames() {
        return dimmedFrames;
    }
}
