package dev.lampwright.engine;

import dev.lampwright.colour.Srgb;
import dev.lampwright.config.Config;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * One colour for each state, taken from the look of the state: its hue is that of the look's mean light, with bright light counting more
 * than dim light. It is bright enough to be visible on a screen, less so for dim looks than for bright ones; a dark look is dark grey. The
 * brightness is our own choice.
 */
public final class StateColours {
    private static final int RATE = 5;
    private static final int SETTLING = 2 * RATE;
    private static final int SEEN = 8 * RATE;

    /** The encoded level of the brightest channel of the dimmest look. */
    private static final double DIMMEST = 0.5;

    private static final String DARK = "#404040";
    private static final double NOTHING = 1e-6;
    private static final int FULL = 255;

    private StateColours() {}

    /**
     * Draws the look of each state, with a printer in the middle of its job.
     *
     * @param config whose looks
     * @return for each state a CSS colour, {@code #rrggbb}
     */
    public static Map<PrinterState, String> of(Config config) {
        Map<PrinterState, String> colours = new EnumMap<>(PrinterState.class);
        for (PrinterState state : PrinterState.values()) {
            colours.put(
                    state,
                    colour(light(
                            config, MidJob.status(state, config.bindings().own().keySet()))));
        }
        return colours;
    }

    /** Mean linear light, weighted with itself: red, green, blue. */
    private static double[] light(Config config, PrinterStatus status) {
        Chain chain = Chain.of(config);
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        double[] sums = new double[3];
        double weights = 0;
        for (int i = 0; i < SETTLING + SEEN; i++) {
            long nanos = TimeUnit.SECONDS.toNanos(i) / RATE;
            chain.make(status.heard() ? status.heardAt(nanos) : status, nanos, frame);
            if (i >= SETTLING) {
                weights += add(chain.light().rgba(), sums);
            }
        }
        for (int channel = 0; channel < sums.length; channel++) {
            sums[channel] /= Math.max(NOTHING, weights);
        }
        return sums;
    }

    private static double add(float[] rgba, double[] sums) {
        double weights = 0;
        for (int at = 0; at < rgba.length; at += 4) {
            double weight = rgba[at] + rgba[at + 1] + rgba[at + 2];
            for (int channel = 0; channel < sums.length; channel++) {
                sums[channel] += weight * rgba[at + channel];
            }
            weights += weight;
        }
        return weights;
    }

    private static String colour(double[] light) {
        double most = Math.max(light[0], Math.max(light[1], light[2]));
        if (most < NOTHING) {
            return DARK;
        }
        double level = Srgb.decode(DIMMEST + (1 - DIMMEST) * Srgb.encode(Math.min(1, most)));
        StringBuilder css = new StringBuilder("#");
        for (double channel : light) {
            css.append("%02x".formatted(Math.round(Srgb.encode(channel / most * level) * FULL)));
        }
        return css.toString();
    }
}
