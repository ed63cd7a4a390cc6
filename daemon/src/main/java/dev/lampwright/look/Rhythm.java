package dev.lampwright.look;

import dev.lampwright.signal.Signals;
import java.util.Arrays;

/**
 * When a layer is lit, written as sea charts write the character of a light, or with explicit times; {@link RhythmNotation} reads both.
 * {@code swell} is not from that notation: a smooth rise and fall. A value: two with the same light are equal.
 */
public final class Rhythm {
    /** How long light takes to turn on or off, so that nothing looks harsh. Like a lamp's own inertia; common practice, no source. */
    static final double USUAL_EDGE_S = 0.1;

    /** Larger than the rounding errors of times, even after years. */
    private static final double ROUNDING_S = 1e-6;

    private static final double NANOS_PER_SECOND = 1e9;

    /** Always lit: F. */
    public static final Rhythm FIXED = new Rhythm(1, new double[] {1}, false, USUAL_EDGE_S, 0);

    private final double period;
    private final double[] changes;
    private final boolean swell;
    private final double edge;
    private final double phase;

    /** Lit from 0 to the first change, dark to the second, lit to the third, and so on. */
    private Rhythm(double period, double[] changes, boolean swell, double edge, double phase) {
        this.period = period;
        this.changes = changes;
        this.swell = swell;
        this.edge = edge;
        this.phase = phase;
    }

    /** A rhythm that is lit from 0 to the first change, dark to the second, lit to the third, and so on; all of them in s and below the period. */
    static Rhythm changing(double period, double... changes) {
        return new Rhythm(period, changes, false, USUAL_EDGE_S, 0);
    }

    /** A rhythm that rises and falls smoothly, once in a period in s. */
    static Rhythm swelling(double period) {
        return new Rhythm(period, new double[0], true, USUAL_EDGE_S, 0);
    }

    /**
     * Reads a rhythm.
     *
     * @param text for example {@code F}, {@code Iso 2s}, {@code Oc 4s}, {@code Fl(2) 6s}, {@code Q(3) 10s}, {@code Mo(U) 15s},
     *     {@code swell 4s}, {@code on 0.5s off 1.5s}
     * @return the rhythm
     * @throws IllegalArgumentException if it is not valid; the message says why and what would be valid
     */
    public static Rhythm parse(String text) {
        return new RhythmNotation(text).rhythm();
    }

    /**
     * The same with other edges.
     *
     * @param seconds how long light takes to turn on or off, in s: 0 for at once, {@link #longestEdge} at most
     * @return another rhythm; it changes as often and at the same times, at each of which it is half lit
     */
    public Rhythm withEdge(double seconds) {
        return new Rhythm(period, changes, swell, seconds, phase);
    }

    /**
     * The same, started later.
     *
     * @param share how much later, as a share of its period, 0 to 1
     * @return another rhythm
     */
    public Rhythm withPhase(double share) {
        return new Rhythm(period, changes, swell, edge, share % 1);
    }

    /**
     * How brightly a layer is lit.
     *
     * @param seconds since its look started, 0 or more
     * @return 0 to 1
     */
    public float level(double seconds) {
        double at = at(seconds);
        if (swell) {
            return (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * at / period));
        }
        return isFixed() ? 1 : edged(at);
    }

    /**
     * How long the level stays as it is.
     *
     * @param seconds start of the period, since its look started, 0 or more
     * @return ns: 0 while light changes, {@link Signals#FOREVER} if it never does
     */
    long stillFor(double seconds) {
        if (swell || isFixed()) {
            return swell ? 0 : Signals.FOREVER;
        }
        double at = at(seconds);
        int stretch = stretch(at);
        double last = begin(stretch);
        double next = end(stretch);
        double since = at - last - edge / 2;
        double left = next - at - edge / 2;
        return since > ROUNDING_S && left > ROUNDING_S ? (long) ((left - ROUNDING_S) * NANOS_PER_SECOND) : 0;
    }

    /** Which stretch between two changes a moment is in, from 0; light is on in those with an even number. */
    private int stretch(double at) {
        int stretch = 0;
        while (stretch < changes.length && at >= changes[stretch]) {
            stretch++;
        }
        return stretch;
    }

    private double begin(int stretch) {
        return stretch == 0 ? 0 : changes[stretch - 1];
    }

    private double end(int stretch) {
        return stretch == changes.length ? period : changes[stretch];
    }

    /** Half lit at the exact moment of a change, and fully lit half an edge later. */
    private float edged(double at) {
        int stretch = stretch(at);
        double last = begin(stretch);
        double next = end(stretch);
        boolean lit = stretch % 2 == 0;
        double away = edge == 0 ? 0.5 : Math.min(0.5, Math.min(at - last, next - at) / edge);
        return (float) (lit ? 0.5 + away : 0.5 - away);
    }

    /**
     * How long one cycle lasts.
     *
     * @return seconds
     */
    public double period() {
        return period;
    }

    /**
     * The longest edge with which it is fully lit and fully dark each time: its shortest stretch of light or of darkness.
     *
     * @return seconds; meaningful only if it {@link #flashes}
     */
    public double longestEdge() {
        double shortest = period - (changes.length == 0 ? 0 : changes[changes.length - 1]);
        double last = 0;
        for (double change : changes) {
            shortest = Math.min(shortest, change - last);
            last = change;
        }
        return shortest;
    }

    /**
     * Whether light turns on and off abruptly, rather than being always on or rising and falling smoothly.
     *
     * @return false for {@code F} and {@code swell}
     */
    public boolean flashes() {
        return !swell && !isFixed();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Rhythm rhythm
                && period == rhythm.period
                && swell == rhythm.swell
                && edge == rhythm.edge
                && phase == rhythm.phase
                && Arrays.equals(changes, rhythm.changes);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(changes)
                + Double.hashCode(period)
                + Boolean.hashCode(swell)
                + 7 * Double.hashCode(edge)
                + 17 * Double.hashCode(phase);
    }

    /** The position within the period. */
    private double at(double seconds) {
        return (phase == 0 ? seconds : seconds + (1 - phase) * period) % period;
    }

    /** Only a rhythm that is always lit has no change within its period. */
    private boolean isFixed() {
        return changes.length == 1 && changes[0] >= period;
    }
}
