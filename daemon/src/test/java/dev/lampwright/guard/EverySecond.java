package dev.lampwright.guard;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Counts the flashes of everything that a person can see, in every second that begins at a frame: each light, each eight neighbours, each
 * zone, the strip, and the room. Written only from the words of the standard; shares no code with the guard. Sources: WCAG 2.2, "general
 * flash and red flash thresholds", "relative luminance", and both working definitions of a pair of opposing transitions that involves a
 * saturated red (of 2.2 by u′v′, of 2.0 by R − G − B); from memory of the standards' text.
 */
public final class EverySecond {
    private static final long SECOND = 1_000_000_000L;
    /** What rounding may do. */
    private static final double ROUNDING = 1e-9;
    /** Colours darker than this are not distinguished by hue: our own choice, because the standard does not say. */
    private static final double DIM = 20.0 / 320;

    private final Setup setup;
    private final Fitting fitting;
    private final List<int[]> groups = new ArrayList<>();
    private final List<double[]> weights = new ArrayList<>();
    private final List<Long> times = new ArrayList<>();
    private final List<double[][]> seen = new ArrayList<>();

    /** A sequence of one measure, and whether it includes saturated red. */
    private static final class Series {
        private final double[] values;
        private final boolean[] marks;

        Series(double[] values, boolean[] marks) {
            this.values = values;
            this.marks = marks;
        }
    }

    public EverySecond(Setup setup, Fitting fitting, List<Double> volts) {
        this.setup = setup;
        this.fitting = fitting;
        int pixels = setup.pixels();
        int lights = pixels + fitting.dimmerNames().size();
        IntStream.range(0, lights).forEach(light -> group(light));
        IntStream.rangeClosed(0, pixels - 8)
                .forEach(first -> group(IntStream.range(first, first + 8).toArray()));
        group(IntStream.range(0, pixels).toArray());
        for (Zone zone : fitting.zones().values()) {
            group(IntStream.range(0, zone.pixelCount())
                    .map(zone::pixel)
                    .map(this::light)
                    .distinct()
                    .toArray());
        }
        if (lights > pixels) {
            groups.add(IntStream.range(0, lights).toArray());
            weights.add(IntStream.range(0, lights)
                    .mapToDouble(light -> power(light, volts))
                    .toArray());
        }
    }

    private void group(int... lights) {
        double[] alike = new double[lights.length];
        Arrays.fill(alike, 1);
        groups.add(lights);
        weights.add(alike);
    }

    private int light(int canvasPixel) {
        for (Fitting.DimmerUse use : fitting.dimmers()) {
            if (use.colourPixel() == canvasPixel) {
                return setup.pixels() + fitting.dimmerNames().indexOf(use.name());
            }
        }
        return canvasPixel;
    }

    /** Light of a lamp or a pixel at full, in lm: 100 per watt for white lamps, 40 for colours; our own assumption, no source. */
    private double power(int light, List<Double> volts) {
        if (light < setup.pixels()) {
            double amps = (setup.channelMicroamps().get(0)
                            + setup.channelMicroamps().get(1)
                            + setup.channelMicroamps().get(2))
                    / 1e6;
            return 40 * amps * volts.get(setup.stripSupply());
        }
        double lumens = 0;
        String name = fitting.dimmerNames().get(light - setup.pixels());
        for (int i = 0; i < fitting.dimmers().size(); i++) {
            if (fitting.dimmers().get(i).name().equals(name)) {
                Setup.Dimmer dimmer = setup.dimmers().get(i);
                double watts = dimmer.fullMilliamps() / 1e3 * volts.get(dimmer.supply());
                lumens += watts * (fitting.dimmers().get(i).isWhite() ? 100 : 40);
            }
        }
        return lumens;
    }

    public void see(Frame frame, long nanos) {
        times.add(nanos);
        double[][] lights = new double[setup.pixels() + fitting.dimmerNames().size()][];
        int channels = setup.channels();
        for (int pixel = 0; pixel < setup.pixels(); pixel++) {
            double[] colour = new double[3];
            for (int channel = 0; channel < channels; channel++) {
                double share = (frame.strip()[pixel * channels + channel] & 0xFF) / 255.0;
                switch (setup.order().charAt(channel)) {
                    case 'R' -> colour[0] += share;
                    case 'G' -> colour[1] += share;
                    case 'B' -> colour[2] += share;
                    default -> {
                        for (int i = 0; i < 3; i++) {
                            colour[i] += share;
                        }
                    }
                }
            }
            lights[pixel] = colour;
        }
        for (int i = 0; i < fitting.dimmers().size(); i++) {
            Fitting.DimmerUse use = fitting.dimmers().get(i);
            int light = setup.pixels() + fitting.dimmerNames().indexOf(use.name());
            double share = frame.duties()[i] / 65_535.0;
            if (use.isWhite()) {
                lights[light] = new double[] {share, share, share};
            } else {
                lights[light] = lights[light] == null ? new double[3] : lights[light];
                lights[light][use.channel()] = share;
            }
        }
        seen.add(lights);
    }

    /** The maximum number of flashes of anything in any second. */
    public int most() {
        int most = 0;
        if (seen.isEmpty()) {
            return most;
        }
        for (int i = 0; i < groups.size(); i++) {
            most = Math.max(most, Math.max(general(groups.get(i), weights.get(i)), red(groups.get(i), weights.get(i))));
            if (groups.get(i).length == 1) {
                most = Math.max(most, hue(groups.get(i)[0]));
            }
        }
        return most;
    }

    private int general(int[] lights, double[] weight) {
        double[] values = new double[seen.size()];
        for (int t = 0; t < values.length; t++) {
            double luminance = 0;
            double all = 0;
            for (int i = 0; i < lights.length; i++) {
                double[] colour = seen.get(t)[lights[i]];
                luminance += weight[i] * (0.2126 * colour[0] + 0.7152 * colour[1] + 0.0722 * colour[2]);
                all += weight[i];
            }
            values[t] = luminance / all;
        }
        boolean[] marks = new boolean[values.length];
        Arrays.fill(marks, true);
        return mostFlashes(new Series(values, marks), 0.1 - ROUNDING, 0.8 - ROUNDING);
    }

    private int red(int[] lights, double[] weight) {
        double[] values = new double[seen.size()];
        boolean[] marks = new boolean[values.length];
        for (int t = 0; t < values.length; t++) {
            double redness = 0;
            double all = 0;
            for (int i = 0; i < lights.length; i++) {
                double[] colour = seen.get(t)[lights[i]];
                redness += weight[i] * Math.max(0, colour[0] - colour[1] - colour[2]) * 320;
                all += weight[i];
                marks[t] |= saturated(colour);
            }
            values[t] = redness / all;
        }
        return mostFlashes(new Series(values, marks), 20 + ROUNDING, Double.MAX_VALUE);
    }

    /** 1 for saturated red, −1 for what is more than 0.2 from it whatever red it is, 0 for what is neither. */
    private int hue(int light) {
        double[] values = new double[seen.size()];
        boolean[] marks = new boolean[values.length];
        for (int t = 0; t < values.length; t++) {
            double[] colour = seen.get(t)[light];
            boolean lit = colour[0] + colour[1] + colour[2] > DIM;
            marks[t] = saturated(colour);
            values[t] = !lit ? 0 : marks[t] ? 1 : farFromThatRed(light, t) ? -1 : 0;
        }
        return mostFlashes(new Series(values, marks), 2 - ROUNDING, Double.MAX_VALUE);
    }

    /** Whether a colour is more than 0.2 from the nearest saturated red in time before it, or the first after it. */
    private boolean farFromThatRed(int light, int time) {
        for (int t = time - 1; t >= 0; t--) {
            if (isLitRed(seen.get(t)[light])) {
                return apart(seen.get(t)[light], seen.get(time)[light]) > 0.2 + ROUNDING;
            }
        }
        for (int t = time + 1; t < seen.size(); t++) {
            if (isLitRed(seen.get(t)[light])) {
                return apart(seen.get(t)[light], seen.get(time)[light]) > 0.2 + ROUNDING;
            }
        }
        return false;
    }

    private static boolean isLitRed(double[] colour) {
        return saturated(colour) && colour[0] + colour[1] + colour[2] > DIM;
    }

    private static boolean saturated(double[] colour) {
        return colour[0] > 0 && colour[0] / (colour[0] + colour[1] + colour[2]) >= 0.8 - 1e-12;
    }

    private static double apart(double[] one, double[] other) {
        double[] a = chromaticity(one);
        double[] b = chromaticity(other);
        return Math.hypot(a[0] - b[0], a[1] - b[1]);
    }

    /** CIE 1976 u′ and v′ via XYZ, with the matrix of IEC 61966-2-1. */
    private static double[] chromaticity(double[] c) {
        double x = 0.4124 * c[0] + 0.3576 * c[1] + 0.1805 * c[2];
        double y = 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
        double z = 0.0193 * c[0] + 0.1192 * c[1] + 0.9505 * c[2];
        return new double[] {4 * x / (x + 15 * y + 3 * z), 9 * y / (x + 15 * y + 3 * z)};
    }

    /** In each second that begins at a state: changes between adjacent extremes, in turn up and down; two are a flash. */
    private int mostFlashes(Series series, double least, double darkerBelow) {
        if (changes(series, 0, series.values.length - 1, least, darkerBelow) < 8) {
            return changes(series, 0, series.values.length - 1, least, darkerBelow) / 2;
        }
        int most = 0;
        int last = 0;
        for (int first = 0; first < series.values.length; first++) {
            while (last + 1 < series.values.length && times.get(last + 1) - times.get(first) <= SECOND) {
                last++;
            }
            most = Math.max(most, changes(series, first, last, least, darkerBelow) / 2);
        }
        return most;
    }

    /**
     * Walks along and keeps the last extreme. A value that is a change away from it, in the direction opposite to the last change, is a
     * change; a value beyond the extreme moves it on.
     */
    private static int changes(Series series, int first, int last, double least, double darkerBelow) {
        int count = 0;
        int direction = 0;
        double[] values = series.values;
        int lowest = first;
        int highest = first;
        boolean before = false;
        boolean since = series.marks[first];
        boolean pending = false;
        for (int t = first + 1; t <= last; t++) {
            boolean rises = direction <= 0 && isChange(values[lowest], values[t], least, darkerBelow);
            boolean falls = direction >= 0 && isChange(values[highest], values[t], least, darkerBelow);
            rises &= values[t] > values[lowest];
            falls &= values[t] < values[highest];
            if (rises || falls) {
                direction = rises ? 1 : -1;
                lowest = t;
                highest = t;
                before = since;
                since = false;
                pending = true;
            }
            lowest = values[t] <= values[lowest] ? t : lowest;
            highest = values[t] >= values[highest] ? t : highest;
            since |= series.marks[t];
            if (pending && (before || since)) {
                count++;
                pending = false;
            }
        }
        return count;
    }

    private static boolean isChange(double from, double to, double least, double darkerBelow) {
        return Math.abs(to - from) >= least && Math.min(from, to) < darkerBelow;
    }
}
