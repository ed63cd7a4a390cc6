package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.LookFault;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Draws every look of a configuration for ten seconds of made-up status, so that a failing one fails in advance, and one that flashes too
 * often is known. A long strip is drawn whole once a second, and otherwise shortened.
 */
public final class Rehearsal {
    private static final long SECONDS = TimeUnit.NANOSECONDS.toSeconds(MadeUpStatus.STEPS * MadeUpStatus.STEP_NANOS);

    private final Config whole;
    private final Config config;
    private final List<PrinterStatus> statuses;
    private final Progress progress;
    private final List<String> held = new ArrayList<>();
    private Optional<Failing> failing = Optional.empty();

    /**
     * A look that cannot be drawn.
     *
     * @param look its name
     * @param why what happened
     */
    public record Failing(String look, String why) {}

    private Rehearsal(Config whole, Progress progress) {
        this.whole = whole;
        this.progress = progress;
        config = ShortStrip.of(whole);
        statuses = MadeUpStatus.all(whole.bindings());
    }

    /**
     * Draws every look by itself, and then what the cues show. Ends with the first that fails.
     *
     * @param config whose looks
     * @param progress receives each look that is drawn
     * @return the result
     */
    public static Rehearsal of(Config config, Progress progress) {
        return of(config, progress, new CheckMemory());
    }

    /**
     * Draws every look by itself, unless its result is known, and then what the cues show. Ends with the first that fails.
     *
     * @param config whose looks
     * @param progress receives each look that is drawn
     * @param memory has the results of looks that were drawn before
     * @return the result
     */
    static Rehearsal of(Config config, Progress progress, CheckMemory memory) {
        Rehearsal rehearsal = new Rehearsal(config, progress);
        List<LookSpec> looks = List.copyOf(config.looks().values());
        for (int i = 0; i < looks.size() && rehearsal.failing.isEmpty(); i++) {
            progress.at(i, looks.size());
            String name = looks.get(i).name();
            CheckMemory.Key key = CheckMemory.Key.of(config, rehearsal.config, name);
            rehearsal.take(name, memory.drawing(key, () -> rehearsal.drawLook(name)));
        }
        if (rehearsal.failing.isEmpty()) {
            rehearsal.draw(rehearsal.config, rehearsal.config.light(), config.framesPerSecond());
        }
        progress.at(looks.size(), looks.size());
        return rehearsal;
    }

    /**
     * A look that cannot be drawn.
     *
     * @return the first, if any
     */
    public Optional<Failing> failing() {
        return failing;
    }

    /**
     * The looks that the flash guard had to hold.
     *
     * @return their names; without those after one that fails
     */
    public List<String> held() {
        return List.copyOf(held);
    }

    private void take(String name, CheckMemory.Drawing drawing) {
        failing = drawing.failing();
        if (drawing.held()) {
            held.add(name);
        }
    }

    private CheckMemory.Drawing drawLook(String name) {
        failing = Optional.empty();
        if (config.setup().pixels() < whole.setup().pixels()) {
            draw(whole, showing(whole, name, whole.light().guard().withFlashing()), 1);
        }
        if (failing.isPresent()) {
            return new CheckMemory.Drawing(failing, false);
        }
        LightSpec limited = showing(config, name, config.light().guard().withoutFlashing());
        Chain chain = draw(config, limited, config.framesPerSecond());
        return new CheckMemory.Drawing(failing, chain.guard().heldFrames() > 0);
    }

    private static LightSpec showing(Config config, String look, GuardSettings guard) {
        return config.light().guardedBy(guard).showing(config.looks().get(look));
    }

    private Chain draw(Config drawn, LightSpec light, int framesPerSecond) {
        Chain chain = Chain.of(drawn.setup(), light, framesPerSecond);
        Frame frame =
                new Frame(drawn.setup().stripBytes(), drawn.setup().dimmers().size());
        for (long i = 0; i < SECONDS * framesPerSecond && failing.isEmpty(); i++) {
            progress.drawn();
            long nanos = TimeUnit.SECONDS.toNanos(i) / framesPerSecond;
            failing = draw(chain, statuses.get((int) (nanos / MadeUpStatus.STEP_NANOS)), nanos, frame);
        }
        return chain;
    }

    private static Optional<Failing> draw(Chain chain, PrinterStatus status, long nanos, Frame frame) {
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
        return Optional.empty();
    }
}
