package dev.lampwright.guard;

import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Counts flashes as the words of the standard have it, and shares nothing with the guard: in each window of one second the most opposing
 * changes between a peak and a valley that can be picked out one after the other, found by trying all of them; two make a flash. Source: WCAG 2.2, "general flash and
 * red flash thresholds", and WCAG 2.0's working definition of a saturated red transition; numbers from memory of the standards' text.
 */
public final class FlashCounter {
    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);
    private static final double FULL = 255;
    /** Colours darker than this are not told apart by hue: the guard's own choice. */
    private static final double DIM = 20.0 / 320;

    private final int channels;
    private final String order;
    private final int[] pixels;
    private final List<State> states = new ArrayList<>();

    /** Red, green and blue of one pixel, 0 to 1 and above with white. */
    private record Colour(double red, double green, double blue) {
        double luminance() {
            return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
        }

        double redness() {
            return Math.max(0, red - green - blue) * 320;
        }

        boolean isSaturatedRed() {
            return red > 0 && red / (red + green + blue) > 0.8 - 1e-12;
        }

        boolean isLit() {
            return red + green + blue > DIM;
        }

        /** CIE 1976 u′ and v′ by way of XYZ, with the matrix of IEC 61966-2-1. */
        double[] chromaticity() {
            double x = 0.4124 * red + 0.3576 * green + 0.1805 * blue;
            double y = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
            double z = 0.0193 * red + 0.1192 * green + 0.9505 * blue;
            double d = x + 15 * y + 3 * z;
            return new double[] {4 * x / d, 9 * y / d};
        }
    }

    /** What is seen at a time: the colours of the pixels, of which each is judged before anything is averaged. */
    private record State(long nanos, List<Colour> colours, double luminance, double redness, boolean isSaturatedRed) {
        static State of(long nanos, List<Colour> colours) {
            return new State(
                    nanos,
                    colours,
                    colours.stream().mapToDouble(Colour::luminance).average().orElseThrow(),
                    colours.stream().mapToDouble(Colour::redness).average().orElseThrow(),
                    colours.stream().anyMatch(Colour::isSaturatedRed));
        }
    }

    /** Whether two states are one change, and which way it goes: 1, −1, or 0 if it is none. */
    private interface Change {
        int of(State from, State to);
    }

    /** What is plotted against time, to see which peaks and valleys are adjacent. */
    private interface Plot {
        double of(State state);
    }

    /** Counts what some pixels show. */
    public FlashCounter(String order, int... pixels) {
        this.order = order;
        this.channels = order.length();
        this.pixels = pixels.clone();
    }

    public void see(Frame frame, long nanos) {
        states.add(State.of(
                nanos,
                Arrays.stream(pixels).mapToObj(pixel -> colour(frame, pixel)).toList()));
    }

    private Colour colour(Frame frame, int pixel) {
        double white = channels == 4 ? share(frame, pixel, 'W') : 0;
        return new Colour(
                share(frame, pixel, 'R') + white, share(frame, pixel, 'G') + white, share(frame, pixel, 'B') + white);
    }

    private double share(Frame frame, int pixel, char colour) {
        return (frame.strip()[pixel * channels + order.indexOf(colour)] & 0xFF) / FULL;
    }

    /** The most general or red flashes in any second. */
    public int most() {
        return Math.max(mostGeneral(), Math.max(mostRed(), mostRedByHue()));
    }

    int mostGeneral() {
        return most(State::luminance, (from, to) -> {
            double change = to.luminance() - from.luminance();
            boolean counts = Math.abs(change) > 0.1 - 1e-12 && Math.min(to.luminance(), from.luminance()) < 0.8 - 1e-12;
            return counts ? (int) Math.signum(change) : 0;
        });
    }

    int mostRed() {
        return most(State::redness, (from, to) -> {
            double change = to.redness() - from.redness();
            boolean counts = Math.abs(change) > 20 + 1e-9 && (to.isSaturatedRed() || from.isSaturatedRed());
            return counts ? (int) Math.signum(change) : 0;
        });
    }

    /** The hue of several pixels together says nothing, so each is counted by itself. */
    int mostRedByHue() {
        int most = 0;
        for (int i = 0; i < pixels.length; i++) {
            int pixel = i;
            long reds = states.stream()
                    .filter(state -> state.colours().get(pixel).isSaturatedRed())
                    .count();
            if (reds == 0 || reds == states.size()) {
                continue;
            }
            most = Math.max(
                    most,
                    most(
                            state -> 0,
                            (from, to) -> hueChange(
                                    from.colours().get(pixel), to.colours().get(pixel))));
        }
        return most;
    }

    private static int hueChange(Colour from, Colour to) {
        if (!from.isLit() || !to.isLit() || from.isSaturatedRed() == to.isSaturatedRed()) {
            return 0;
        }
        double[] one = from.chromaticity();
        double[] other = to.chromaticity();
        boolean counts = Math.hypot(one[0] - other[0], one[1] - other[1]) > 0.2 + 1e-12;
        return counts ? (to.isSaturatedRed() ? 1 : -1) : 0;
    }

    private int most(Plot plot, Change change) {
        int most = 0;
        int first = 0;
        for (int last = 0; last < states.size(); last++) {
            while (states.get(last).nanos() - states.get(first).nanos() > SECOND) {
                first++;
            }
            most = Math.max(most, transitions(states.subList(first, last + 1), plot, change) / 2);
        }
        return most;
    }

    /** For each end the longest chain of changes in turn, up or down last; each from a peak to a valley with nothing beyond between. */
    private static int transitions(List<State> states, Plot plot, Change change) {
        int[] up = new int[states.size()];
        int[] down = new int[states.size()];
        for (int to = 1; to < up.length; to++) {
            double end = plot.of(states.get(to));
            double least = end;
            double most = end;
            up[to] = up[to - 1];
            down[to] = down[to - 1];
            for (int from = to - 1; from >= 0; from--) {
                double start = plot.of(states.get(from));
                least = Math.min(least, start);
                most = Math.max(most, start);
                int direction = change.of(states.get(from), states.get(to));
                if (direction > 0 && start == least && end == most) {
                    up[to] = Math.max(up[to], down[from] + 1);
                } else if (direction < 0 && start == most && end == least) {
                    down[to] = Math.max(down[to], up[from] + 1);
                }
            }
        }
        return Math.max(up[up.length - 1], down[down.length - 1]);
    }
}
