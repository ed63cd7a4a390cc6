package dev.lampwright.tool.check;

import dev.lampwright.colour.ColourVision;
import dev.lampwright.colour.Light;
import dev.lampwright.colour.Oklab;
import java.util.Arrays;
import java.util.List;

/**
 * What a look leaves with somebody who glances at it: its mean colour, how bright it is along the strip, and how its brightness comes and
 * goes. Brightness is the lightness of OKLab.
 */
final class LookSummary {
    private static final int SECTIONS = 8;

    private final Oklab colour;
    private final double[] shape;
    private final double[][] rhythms;

    /**
     * Takes an impression.
     *
     * @param frames linear light as red, green and blue of each place; frames at even times, all of the same size
     * @param vision how it is seen
     */
    LookSummary(List<float[]> frames, ColourVision vision) {
        int places = frames.get(0).length / 3;
        shape = new double[places];
        int sections = Math.min(places, SECTIONS);
        rhythms = new double[sections][frames.size()];
        double[] sum = new double[3];
        for (int time = 0; time < frames.size(); time++) {
            for (int place = 0; place < places; place++) {
                float[] frame = frames.get(time);
                Light seen = vision.seen(new Light(frame[3 * place], frame[3 * place + 1], frame[3 * place + 2]));
                double lightness = Oklab.of(seen).lightness();
                shape[place] += lightness / frames.size();
                rhythms[place * sections / places][time] += lightness * sections / places;
                sum[0] += seen.red();
                sum[1] += seen.green();
                sum[2] += seen.blue();
            }
        }
        double share = 1.0 / (places * frames.size());
        colour = Oklab.of(new Light((float) (sum[0] * share), (float) (sum[1] * share), (float) (sum[2] * share)));
        subtractMean(shape);
        Arrays.stream(rhythms).forEach(LookSummary::subtractMean);
    }

    /**
     * How far the mean colours are apart.
     *
     * @param other another impression
     * @return deltaEOK, 0 to 1 and a little above
     */
    double colourDifference(LookSummary other) {
        return colour.difference(other.colour);
    }

    /**
     * How far the brightness along the strip differs, apart from its mean.
     *
     * @param other another impression of as many places
     * @return mean difference of lightness, 0 to 1
     */
    double shapeDifference(LookSummary other) {
        return difference(shape, other.shape, 0);
    }

    /**
     * How far the brightness over time differs, apart from its mean and from when it began, in that section of the strip where it differs
     * most.
     *
     * @param other another impression of as many places and frames
     * @return mean difference of lightness where the two agree best, 0 to 1
     */
    double rhythmDifference(LookSummary other) {
        double most = 0;
        for (int section = 0; section < rhythms.length; section++) {
            double least = Double.POSITIVE_INFINITY;
            for (int shift = 0; shift < rhythms[section].length; shift++) {
                least = Math.min(least, difference(rhythms[section], other.rhythms[section], shift));
            }
            most = Math.max(most, least);
        }
        return most;
    }

    private static double difference(double[] one, double[] other, int shift) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += Math.abs(one[i] - other[(i + shift) % other.length]);
        }
        return sum / one.length;
    }

    private static void subtractMean(double[] values) {
        double mean = Arrays.stream(values).average().orElse(0);
        Arrays.setAll(values, i -> values[i] - mean);
    }
}
