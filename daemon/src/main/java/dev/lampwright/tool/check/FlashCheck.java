package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.guard.FlashMeter;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import java.util.stream.IntStream;

/**
 * Finds out why looks flash too often: draws each for ten seconds of made-up status at the frame rate, leaving out one layer at a time, and
 * checks whether the flash guard would still have to hold it.
 */
public final class FlashCheck {
    private static final long SECONDS = TimeUnit.NANOSECONDS.toSeconds(MadeUpStatus.STEPS * MadeUpStatus.STEP_NANOS);

    /** The minimum that is reported: the guard counts longer seconds than the meter does, so what it holds may be measured as less. */
    private static final int LEAST_TOO_MANY = 4;

    private final Config whole;
    private final Config config;
    private final Progress progress;
    private final LightSpec calm;
    private final List<PrinterStatus> statuses;
    private final Frame frame;

    /**
     * How a look flashes.
     *
     * @param look its name
     * @param layers the layers, from 0, each of which must be removed to stop that; empty if removing one is not enough
     * @param flashes how often it flashes in a second; 4 or more if that is too often
     * @param byRhythm whether the rhythm of a single layer makes it flash
     */
    public record Flashing(String look, List<Integer> layers, int flashes, boolean byRhythm) {
        /** Keeps a copy of the list. */
        public Flashing {
            layers = List.copyOf(layers);
        }
    }

    private FlashCheck(Config whole, Progress progress) {
        this.whole = whole;
        this.progress = progress;
        config = ShortStrip.of(whole);
        calm = config.light().guardedBy(config.light().guard().withoutFlashing());
        statuses = MadeUpStatus.all(config.bindings());
        frame = new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
    }

    /**
     * Examines every look that flashes too often.
     *
     * @param config whose looks
     * @return those that flash too often, whether or not the configuration allows it
     */
    public static List<Flashing> of(Config config) {
        return of(config, Rehearsal.of(config, Progress.UNSEEN));
    }

    /**
     * Examines the looks that a rehearsal found to flash too often.
     *
     * @param config whose looks
     * @param rehearsal of the same configuration
     * @return those that flash too often, whether or not the configuration allows it
     */
    static List<Flashing> of(Config config, Rehearsal rehearsal) {
        return of(config, rehearsal, Progress.UNSEEN, new CheckMemory());
    }

    /**
     * Examines the looks that a rehearsal found to flash too often, unless it is known how they flash.
     *
     * @param config whose looks
     * @param rehearsal of the same configuration
     * @param progress is called for every frame
     * @param memory has the results of looks that were drawn before
     * @return those that flash too often, whether or not the configuration allows it
     */
    static List<Flashing> of(Config config, Rehearsal rehearsal, Progress progress, CheckMemory memory) {
        FlashCheck check = new FlashCheck(config, progress);
        return rehearsal.held().stream()
                .map(name -> memory.flashing(
                        CheckMemory.Key.of(check.whole, check.config, name),
                        () -> check.flashing(check.config.looks().get(name))))
                .toList();
    }

    /**
     * Measures how often a look flashes, whether that is too often or not.
     *
     * @param config whose look
     * @param name of the look
     * @param progress is called for every frame
     * @return how often in the worst second, 0 to 32, with the layers without any one of which it would be less often
     */
    public static Flashing measured(Config config, String name, Progress progress) {
        FlashCheck check = new FlashCheck(OneLook.of(config, name), progress);
        LookSpec look = check.config.looks().get(name);
        int most = check.count(look);
        List<Integer> layers = IntStream.range(0, most == 0 ? 0 : look.layers().size())
                .filter(layer -> check.count(look.without(layer)) < most)
                .boxed()
                .toList();
        return new Flashing(name, layers, most, false);
    }

    private Flashing flashing(LookSpec look) {
        List<Integer> layers = guilty(look);
        boolean byRhythm = layers.size() == 1 && !flashes(look.withoutRhythm(layers.get(0)));
        return new Flashing(look.name(), layers, Math.max(LEAST_TOO_MANY, count(look)), byRhythm);
    }

    private List<Integer> guilty(LookSpec look) {
        return IntStream.range(0, look.layers().size())
                .filter(layer -> !flashes(look.without(layer)))
                .boxed()
                .toList();
    }

    private boolean flashes(LookSpec look) {
        Chain chain = Chain.of(config.setup(), calm.showing(look), config.framesPerSecond());
        draw(chain, nanos -> {});
        return chain.guard().heldFrames() > 0;
    }

    private int count(LookSpec look) {
        LightSpec light = calm.guardedBy(calm.guard().withFlashing()).showing(look);
        FlashMeter meter =
                new FlashMeter(config.setup(), light.fitting(), light.guard().volts());
        draw(Chain.of(config.setup(), light, config.framesPerSecond()), nanos -> meter.see(frame, nanos));
        return meter.mostFlashes();
    }

    private void draw(Chain chain, LongConsumer drawn) {
        for (long i = 0; i < SECONDS * config.framesPerSecond(); i++) {
            long nanos = TimeUnit.SECONDS.toNanos(i) / config.framesPerSecond();
            progress.drawn();
            chain.make(statuses.get((int) (nanos / MadeUpStatus.STEP_NANOS)), nanos, frame);
            drawn.accept(nanos);
        }
    }
}
