package dev.lampwright.tool.check;

import dev.lampwright.colour.ColourVision;
import dev.lampwright.colour.Light;
import dev.lampwright.colour.Oklab;
import java.util.Arrays;
import java.util.List;

/**
 * The impression of a look at a glance: its mean colour, its brightness along the strip, and its brightness over time. Brightness is the
 * lightness of OKLab.
 */
final class LookSummary {
    private static final int SECTIONS = 8;

    private final Oklab colour;
    private final double[] shape;
    private final double[][] rhythms;

    /**
     * Creates an impression.
     *
     * @param frames linear light as red, green and blue of each place; frames at equal intervals, all of the same size
     * @param vision how it is seen
     */
    LookSummary(List<float[]> frames, ColourVision vision) {
        int places = frames.get(0).length / 3;
        shape = new double[places];
        int sections = Math.min(places, SECTIONS);
        rhythms = new double[sections][frames.size()];
        Places seen = new Places(places, vision);
        for (int time = 0; time < frames.size(); time++) {
            seen.look(frames.get(time));
            for (int place = 0; place < places; place++) {
                double lightness = seen.lightness[place];
                shape[place] += lightness / frames.size();
                rhythms[place * sections / places][time] += lightness * sections / places;
            }
        }
        colour = seen.mean();
        subtractMean(shape);
        Arrays.stream(rhythms).forEach(LookSummary::subtractMean);
    }

    /**
     * The difference of the mean colours.
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
     * @param other another impression with equally many places
     * @return mean difference of lightness, 0 to 1
     */
    double shapeDifference(LookSummary other) {
        return difference(shape, other.shape, 0);
    }

    /**
     * How far the brightness over time differs, apart from its mean and from when it began, in the section of the strip where it differs
     * most.
     *
     * @param other another impression with equally many places and frames
     * @return mean difference of lightness at the best alignment of the two, 0 to 1
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

    /**
     * What is seen at each place. Light is mostly the same as before at that place, or the same as next to it, and is then not
     * recalculated.
     */
    private static final class Places {
        private final ColourVision vision;
        private final Light[] light;
        private final Light[] seen;
        private final double[] lightness;
        private final double[] sum = new double[3];
        private int count;

        Places(int places, ColourVision vision) {
            this.vision = vision;
            light = new Light[places];
            seen = new Light[places];
            lightness = new double[places];
        }

        void look(float[] frame) {
            for (int place = 0; place < light.length; place++) {
                look(place, new Light(frame[3 * place], frame[3 * place + 1], frame[3 * place + 2]));
                sum[0] += seen[place].red();
                sum[1] += seen[place].green();
                sum[2] += seen[place].blue();
            }
            count += light.length;
        }

        private void look(int place, Light here) {
            if (here.equals(light[place])) {
                return;
            }
            light[place] = here;
            if (place > 0 && here.equals(light[place - 1])) {
                seen[place] = seen[place - 1];
                lightness[place] = lightness[place - 1];
            } else {
                seen[place] = vision.seen(here);
                lightness[place] = Oklab.of(seen[place]).lightness();
            }
        }

        Oklab mean() {
            return Oklab.of(new Light((float) (sum[0] / count), (float) (sum[1] / count), (float) (sum[2] / count)));
        }
    }

    private static void subtractMean(double[] values) {
        double mean = Arrays.stream(values).average().orElse(0);
        Arrays.setAll(values, i -> values[i] - mean);
    }
}
