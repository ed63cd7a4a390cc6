package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.cue.Cue;
import dev.lampwright.cue.Easing;
import dev.lampwright.engine.Chain;
import dev.lampwright.look.Look;
import dev.lampwright.look.LookFault;
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
     * @param config whose looks; not in use elsewhere at the same time
     * @return the first look that fails, if any does
     */
    public static Optional<Failing> of(Config config) {
        Rehearsal rehearsal = new Rehearsal(config);
        for (Look look : config.looks().values()) {
            Cue always = new Cue(look, List.of(), 0, Easing.LINEAR);
            Optional<Failing> failing = rehearsal.draw(List.of(always));
            if (failing.isPresent()) {
                return failing;
            }
        }
        return rehearsal.draw(config.cues());
    }

    private Optional<Failing> draw(List<Cue> cues) {
        Chain chain = Chain.of(config, cues);
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
