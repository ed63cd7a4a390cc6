package dev.lampwright.tool.check;

import dev.lampwright.colour.ColourVision;
import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.MidJob;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * Finds states that somebody who lacks one kind of cone cannot distinguish. Two looks are distinguishable if they differ enough in any of
 * three: mean colour as that person sees it, shape, and rhythm. How much is enough is our own choice.
 */
public final class VisionCheck {
    /** Five times the just noticeable difference, a deltaEOK of 0.02 (CSS Color Module Level 4, "Gamut Mapping"). */
    private static final double COLOUR_ENOUGH = 0.1;

    private static final double SHAPE_ENOUGH = 0.05;
    private static final double RHYTHM_ENOUGH = 0.03;

    private static final int RATE = 10;
    private static final int SETTLING = 2 * RATE;
    private static final int SEEN = 12 * RATE;
    private static final int MOST_PLACES = 60;

    private final Config config;
    private final Progress progress;

    /**
     * Two states that look alike.
     *
     * @param one a state
     * @param other another, with another look
     * @param oneLook name of the first one's look
     * @param otherLook name of the other's look
     * @param to who cannot distinguish them, 1 or more
     */
    public record Alike(PrinterState one, PrinterState other, String oneLook, String otherLook, List<ColourVision> to) {
        /** Keeps a copy of the list. */
        public Alike {
            to = List.copyOf(to);
        }
    }

    private VisionCheck(Config config, Progress progress) {
        this.config = config;
        this.progress = progress;
    }

    /**
     * Compares the looks of all states, with a printer in the middle of its job.
     *
     * @param config whose looks
     * @return states that look alike; two that share a look are meant to
     */
    public static List<Alike> of(Config config) {
        return of(config, Progress.UNSEEN);
    }

    /**
     * Compares the looks of all states, with a printer in the middle of its job.
     *
     * @param config whose looks
     * @param progress is called for every frame
     * @return states that look alike; two that share a look are meant to
     */
    public static List<Alike> of(Config config, Progress progress) {
        VisionCheck check = new VisionCheck(ShortStrip.of(config), progress);
        Map<PrinterState, LookSpec> looks = check.looks();
        Map<LookSpec, Map<ColourVision, LookSummary>> impressions = new LinkedHashMap<>();
        looks.forEach((state, look) -> impressions.computeIfAbsent(look, any -> check.impressions(look, state)));
        List<Alike> alike = new ArrayList<>();
        List<PrinterState> states = List.copyOf(looks.keySet());
        for (int i = 0; i < states.size(); i++) {
            for (PrinterState other : states.subList(i + 1, states.size())) {
                LookSpec oneLook = looks.get(states.get(i));
                LookSpec otherLook = looks.get(other);
                List<ColourVision> to = alikeTo(impressions.get(oneLook), impressions.get(otherLook));
                if (!oneLook.equals(otherLook) && !to.isEmpty()) {
                    alike.add(new Alike(states.get(i), other, oneLook.name(), otherLook.name(), to));
                }
            }
        }
        return alike;
    }

    private static List<ColourVision> alikeTo(
            Map<ColourVision, LookSummary> one, Map<ColourVision, LookSummary> other) {
        return one.keySet().stream()
                .filter(vision -> !toldApart(one.get(vision), other.get(vision)))
                .toList();
    }

    private static boolean toldApart(LookSummary one, LookSummary other) {
        return one.colourDifference(other) >= COLOUR_ENOUGH
                || one.shapeDifference(other) >= SHAPE_ENOUGH
                || one.rhythmDifference(other) >= RHYTHM_ENOUGH;
    }

    /** The look of each state. */
    private Map<PrinterState, LookSpec> looks() {
        Map<PrinterState, LookSpec> looks = new EnumMap<>(PrinterState.class);
        for (PrinterState state : PrinterState.values()) {
            Chain chain = Chain.of(config);
            chain.make(MidJob.status(state, config.bindings().own().keySet()), 0, frame());
            looks.put(state, config.looks().get(chain.look()));
        }
        return looks;
    }

    private Map<ColourVision, LookSummary> impressions(LookSpec look, PrinterState state) {
        List<float[]> frames =
                frames(look, MidJob.status(state, config.bindings().own().keySet()));
        Map<ColourVision, LookSummary> impressions = new EnumMap<>(ColourVision.class);
        for (ColourVision vision : ColourVision.values()) {
            impressions.put(vision, new LookSummary(frames, vision));
        }
        return impressions;
    }

    private List<float[]> frames(LookSpec look, PrinterStatus status) {
        LightSpec light = config.light().showing(look).guardedBy(GuardSettings.USUAL);
        Chain chain = Chain.of(config.setup(), light, config.framesPerSecond());
        Frame frame = frame();
        List<float[]> frames = new ArrayList<>();
        for (int i = 0; i < SETTLING + SEEN; i++) {
            progress.drawn();
            chain.make(status, TimeUnit.SECONDS.toNanos(i) / RATE, frame);
            if (i >= SETTLING) {
                frames.add(places(chain.light().rgba()));
            }
        }
        return frames;
    }

    /** Means of neighbouring pixels, so that a long strip does not take longer to judge. */
    private static float[] places(float[] rgba) {
        int pixels = rgba.length / 4;
        int places = Math.min(pixels, MOST_PLACES);
        float[] means = new float[3 * places];
        int[] counts = new int[places];
        for (int pixel = 0; pixel < pixels; pixel++) {
            counts[place(pixel, places, pixels)]++;
        }
        for (int pixel = 0; pixel < pixels; pixel++) {
            int place = place(pixel, places, pixels);
            for (int channel = 0; channel < 3; channel++) {
                means[3 * place + channel] += rgba[4 * pixel + channel] / counts[place];
            }
        }
        return means;
    }

    private static int place(int pixel, int places, int pixels) {
        return (int) ((long) pixel * places / pixels);
    }

    private Frame frame() {
        return new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
    }
}
