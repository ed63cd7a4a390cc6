package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.InventedReadings;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.LookSpec;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.tool.plan.LookDemand;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * What one look demands, drawn for ten seconds without being shown: in that time an invented job heats up and runs from beginning to end.
 * The ceilings are as high as possible, so that the look's full demand is visible.
 */
public final class AskedLight implements LookDemand {
    private static final int FRAMES_PER_S = 20;
    private static final int FRAMES = 10 * FRAMES_PER_S;
    private static final int HIGHEST_CEILING = 65_535;
    private static final double FULL_BYTE = 255;
    private static final double FULL_DUTY = 65_535;
    private static final double BED_C = 60;
    private static final double NOZZLE_C = 215;

    private final Config config;
    private final LookSpec look;

    private AskedLight(Config config, LookSpec look) {
        this.config = config;
        this.look = look;
    }

    /**
     * The demand of each look.
     *
     * @param config whose looks
     * @return one for each look
     */
    public static List<LookDemand> ofAll(Config config) {
        return config.looks().values().stream()
                .<LookDemand>map(look -> new AskedLight(config, look))
                .toList();
    }

    @Override
    public String name() {
        return look.name();
    }

    @Override
    public void moments(Taker taker) {
        Setup setup = open(config.setup());
        LightSpec light = config.light().showing(look).guardedBy(GuardSettings.USUAL);
        Chain chain = Chain.of(setup, light, FRAMES_PER_S);
        Frame frame = new Frame(setup.stripBytes(), setup.dimmers().size());
        for (int i = 0; i < FRAMES; i++) {
            long nanos = TimeUnit.SECONDS.toNanos(i) / FRAMES_PER_S;
            chain.make(status((double) i / (FRAMES - 1), nanos), nanos, frame);
            taker.take(strip(frame), dimmers(frame));
        }
    }

    private PrinterStatus status(double share, long nanos) {
        double ambientC = config.light().room().ambientC();
        PrinterStatus made = PrinterStatus.nothingHeard()
                .withState(PrinterState.PRINTING, nanos)
                .withReading(Quantity.BED_SETPOINT, BED_C, nanos)
                .withReading(Quantity.BED_ACTUAL, ambientC + (BED_C - ambientC) * share, nanos)
                .withReading(Quantity.NOZZLE_SETPOINT, NOZZLE_C, nanos)
                .withReading(Quantity.NOZZLE_ACTUAL, ambientC + (NOZZLE_C - ambientC) * share, nanos)
                .withReading(Quantity.JOB_PROGRESS, share, nanos);
        return InventedReadings.in(made, config.bindings().own().keySet(), share);
    }

    private static Setup open(Setup setup) {
        return setup.withCeilings(Collections.nCopies(setup.ceilingsMilliamps().size(), HIGHEST_CEILING));
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
