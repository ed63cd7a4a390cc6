package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;

/** Measures how often light would flash without limits, in the regions and by the measures of {@link FlashGuard}. */
public final class FlashMeter {
    private static final long SECOND = 1_000_000_000L;
    private static final int TRANSITIONS_PER_FLASH = 2;
    /** The maximum that {@link Traces} can remember: 32 flashes in a second. */
    private static final int DEPTH = 64;

    private final LightReader lights;
    private final LightMeasure measure;
    private final List<Regions> all = new ArrayList<>();
    private int most;

    /**
     * Creates a meter that has seen nothing.
     *
     * @param setup what is fitted to the controller
     * @param fitting what looks are made for, on the same strip and dimmers
     * @param volts voltage of each supply, by its index
     */
    public FlashMeter(Setup setup, Fitting fitting, List<Double> volts) {
        lights = new LightReader(setup.order(), fitting);
        measure = LightMeasure.ofFrames(lights.count());
        all.add(new SingleLights(lights.count(), DEPTH));
        all.add(new PixelRuns(fitting.pixels(), DEPTH));
        all.addAll(Areas.of(setup, fitting, volts, DEPTH));
    }

    /**
     * Evaluates a frame.
     *
     * @param frame a frame for the fitted lights
     * @param nanos its time, later than that of the previous frame
     */
    public void see(Frame frame, long nanos) {
        lights.read(frame);
        measure.look(lights);
        for (Regions regions : all) {
            regions.look(measure);
            regions.shown().keepAll(regions, nanos, true);
            for (int region = 0; region < regions.count(); region++) {
                most = Math.max(most, regions.shown().transitionsAfter(region, nanos - SECOND));
            }
        }
    }

    /**
     * How often the most flashing light flashed.
     *
     * @return the most flashes in any second, 32 at most
     */
    public int mostFlashes() {
        return most / TRANSITIONS_PER_FLASH;
    }
}
