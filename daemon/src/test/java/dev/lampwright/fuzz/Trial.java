package dev.lampwright.fuzz;

import dev.lampwright.config.Config;
import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.engine.Chain;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.testing.CeilingCheck;
import dev.lampwright.testing.Recording;
import java.util.concurrent.TimeUnit;

/** An accepted configuration makes frames: for each state a second of them, ten each, and none is over a ceiling. */
final class Trial {
    private static final int FRAMES = 10;
    private static final long STEP = TimeUnit.MILLISECONDS.toNanos(100);

    private Trial() {}

    /**
     * Makes the frames.
     *
     * @throws AssertionError if one is over a ceiling
     */
    static void of(Config config) {
        Chain chain = Chain.of(config);
        CeilingCheck ceiling = new CeilingCheck(config.setup());
        Recording shown = new Recording();
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        long nanos = 0;
        int step = 0;
        for (PrinterState state : PrinterState.values()) {
            PrinterStatus status = status(state, step, nanos);
            step++;
            for (int i = 0; i < FRAMES; i++) {
                chain.make(status, nanos, frame);
                shown.show(Light.WHOLE, 0, frame, nanos);
                ceiling.judge(shown.last()).ifPresent(wrong -> {
                    throw new AssertionError(wrong);
                });
                nanos += STEP;
            }
        }
    }

    private static PrinterStatus status(PrinterState state, int step, long nanos) {
        PrinterStatus status = PrinterStatus.nothingHeard().withState(state, nanos);
        int i = 0;
        for (Quantity quantity : Quantity.values()) {
            status = status.withReading(quantity, 10.0 * i++ * step, nanos);
        }
        return status;
    }
}
