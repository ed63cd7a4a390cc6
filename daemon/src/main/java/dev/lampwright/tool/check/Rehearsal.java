package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.look.LookFault;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Draws every look of a configuration for ten seconds of made-up status, so that one that fails does so beforehand. */
public final class Rehearsal {
    private static final long SECONDS = TimeUnit.NANOSECONDS.toSeconds(MadeUpStatus.STEPS * MadeUpStatus.STEP_NANOS);

    private final Config config;
    private final List<PrinterStatus> statuses;
    private final Frame frame;

    /**
     * A look that cannot be drawn.
     *
     * @param look its name
     * @param why what happened
     */
    public record Failing(String look, String why) {}

    private Rehearsal(Config config) {
        this.config = config;
        statuses = MadeUpStatus.all(config.bindings().events().keySet());
        frame = new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
    }

    /**
     * Draws every look by itself, and then what the cues put on.
     *
     * @param config whose looks
     * @return the first look that fails, if any does
     */
    public static Optional<Failing> of(Config config) {
        Rehearsal rehearsal = new Rehearsal(config);
        for (LookSpec look : config.looks().values()) {
            Optional<Failing> failing = rehearsal.draw(config.light().showing(look));
            if (failing.isPresent()) {
                return failing;
            }
        }
        return rehearsal.draw(config.light());
    }

    private Optional<Failing> draw(LightSpec light) {
        Chain chain = Chain.of(config.setup(), light, config.framesPerSecond());
        for (long i = 0; i < SECONDS * config.framesPerSecond(); i++) {
            long nanos = TimeUnit.SECONDS.toNanos(i) / config.framesPerSecond();
            PrinterStatus status = statuses.get((int) (nanos / MadeUpStatus.STEP_NANOS));
            try {
                chain.make(status, nanos, frame);
            } catch (RuntimeException e) {
                return Optional.of(new Failing(chain.look(), e.toString()));
            }
            if (!chain.faults().isEmpty()) {
                LookFault fault = chain.faults().get(0);
                return Optional.of(new Failing(fault.look(), fault.part() + ": " + fault.why()));
            }
            if (!chain.light().isSound()) {
                return Optional.of(new Failing(chain.look(), "its light is not within 0 and 1"));
            }
        }
        return Optional.empty();
    }
}
