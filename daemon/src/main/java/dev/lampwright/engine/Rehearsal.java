package dev.lampwright.engine;

import dev.lampwright.config.Config;
import dev.lampwright.look.BuiltInLooks;
import dev.lampwright.plan.LookDemand;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Quantity;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * The look of one state, shown to nobody for ten seconds: in them an invented job heats up and goes from its beginning to its end.
 * The ceilings are as high as they can be, so that what the look asks for is seen.
 */
public final class Rehearsal implements LookDemand {
    private static final int FRAMES_PER_S = 20;
    /** The fade from the dark is over by then. */
    private static final int SKIPPED_FRAMES = 3 * FRAMES_PER_S;

    private static final int FRAMES = 10 * FRAMES_PER_S;
    private static final int HIGHEST_CEILING = 65_535;
    private static final double FULL_BYTE = 255;
    private static final double FULL_DUTY = 65_535;
    private static final double BED_C = 60;
    private static final double NOZZLE_C = 215;

    private final Config config;
    private final PrinterState state;

    private Rehearsal(Config config, PrinterState state) {
        this.config = config;
        this.state = state;
    }

    /**
     * The looks of all states.
     *
     * @param config what is fitted
     * @return one for each state
     */
    public static List<LookDemand> ofAll(Config config) {
        return Arrays.stream(PrinterState.values())
                .<LookDemand>map(state -> new Rehearsal(config, state))
                .toList();
    }

    @Override
    public String name() {
        return state.word();
    }

    @Override
    public void moments(Taker taker) {
        Setup setup = open(config.setup());
        BuiltInLooks looks = new BuiltInLooks(setup.pixels(), config.zones(), config.dimmers());
        Chain chain = new Chain(setup, looks, FRAMES_PER_S, config.silentAfter(), config.ambientC());
        Frame frame = new Frame(setup.stripBytes(), setup.dimmers().size());
        for (int i = -SKIPPED_FRAMES; i < FRAMES; i++) {
            long nanos = TimeUnit.SECONDS.toNanos(i + SKIPPED_FRAMES) / FRAMES_PER_S;
            chain.make(status(Math.max(0, (double) i / (FRAMES - 1)), nanos), nanos, frame);
            if (i >= 0) {
                taker.take(strip(frame), dimmers(frame));
            }
        }
    }

    private PrinterStatus status(double share, long nanos) {
        if (state == PrinterState.SILENT) {
            return PrinterStatus.nothingHeard();
        }
        double ambientC = config.ambientC();
        return PrinterStatus.nothingHeard()
                .withState(state, nanos)
                .withReading(Quantity.BED_TARGET, BED_C, nanos)
                .withReading(Quantity.BED_ACTUAL, ambientC + (BED_C - ambientC) * share, nanos)
                .withReading(Quantity.NOZZLE_TARGET, NOZZLE_C, nanos)
                .withReading(Quantity.NOZZLE_ACTUAL, ambientC + (NOZZLE_C - ambientC) * share, nanos)
                .withReading(Quantity.JOB_PROGRESS, share, nanos);
    }

    private static Setup open(Setup setup) {
        return new Setup(
                setup.pixels(),
                setup.order(),
                setup.channelMicroamps(),
                setup.darkMicroamps(),
                setup.stripSupply(),
                setup.holdoverMillis(),
                setup.whenSilent(),
                Collections.nCopies(setup.ceilingsMilliamps().size(), HIGHEST_CEILING),
                setup.dimmers());
    }

    private static double[] strip(Frame frame) {
        double[] duties = new double[frame.strip().length];
        Arrays.setAll(duties, i -> (frame.strip()[i] & 0xFF) / FULL_BYTE);
        return duties;
    }

    private static double[] dimmers(Frame frame) {
        return Arrays.stream(frame.duties())
                .mapToDouble(duty -> duty / FULL_DUTY)
                .toArray();
    }
}
