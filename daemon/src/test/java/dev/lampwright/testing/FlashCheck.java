package dev.lampwright.testing;

import dev.lampwright.guard.EverySecond;
import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.testing.Recording.Entry;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Does the light flash more than three times in a second? Judged by {@link EverySecond}, which counts by WCAG 2.2 and shares nothing with
 * the guard. Frames are timed where they are shown, which is up to some tens of ms after their time: the window is shorter than a second by
 * that much, and if this machine stood still for longer, the second is not judged.
 */
public final class FlashCheck {
    /** By how much the line, the pipes and the machine may move frames together. Measured, no source. */
    public static final long SLACK_NANOS = TimeUnit.MILLISECONDS.toNanos(60);

    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);
    private static final long CHUNK = 4 * SECOND;
    private static final double STRETCH = (double) SECOND / (SECOND - SLACK_NANOS);
    private static final int MOST = 3;

    private final Setup setup;
    private final Fitting fitting;
    private final List<Double> volts;
    private final Heartbeat heartbeat;
    private final List<Entry> chunk = new ArrayList<>();
    private long judged;
    private long inconclusive;

    /**
     * Starts with nothing judged.
     *
     * @param setup what is fitted
     * @param fitting the zones to judge, in addition to every light, every eight neighbours, the strip and the room
     * @param volts of each supply
     * @param heartbeat how late threads are on this machine
     */
    public FlashCheck(Setup setup, Fitting fitting, List<Double> volts, Heartbeat heartbeat) {
        this.setup = setup;
        this.fitting = fitting;
        this.volts = volts;
        this.heartbeat = heartbeat;
    }

    /**
     * Judges what is shown, together with what was shown before.
     *
     * @param shown a frame of the host
     * @return what is wrong, if anything, some seconds later
     */
    public Optional<String> judge(Entry shown) {
        chunk.add(shown);
        long from = chunk.get(0).nanos();
        if (shown.nanos() - from < CHUNK) {
            return Optional.empty();
        }
        int most = mostFlashes();
        long stoodStill = heartbeat.longestBetween(from, shown.nanos());
        judged++;
        chunk.removeIf(entry -> shown.nanos() - entry.nanos() > SECOND);
        if (most > MOST && stoodStill > SLACK_NANOS) {
            inconclusive++;
            return Optional.empty();
        }
        return most > MOST
                ? Optional.of(most + " flashes in a second, up to " + shown.nanos() / 1_000_000 + " ms")
                : Optional.empty();
    }

    /** The number of stretches of four seconds judged. */
    public long judged() {
        return judged;
    }

    /** Among these, those with too many flashes on a machine that stood still in the meantime. */
    public long inconclusive() {
        return inconclusive;
    }

    private int mostFlashes() {
        EverySecond counter = new EverySecond(setup, fitting, volts);
        Frame frame = new Frame(setup.stripBytes(), setup.dimmers().size());
        for (Entry entry : chunk) {
            for (int i = 0; i < frame.strip().length; i++) {
                frame.strip()[i] = entry.strip().get(i).byteValue();
            }
            for (int i = 0; i < frame.duties().length; i++) {
                frame.duties()[i] = entry.duties().get(i);
            }
            counter.see(frame, Math.round((entry.nanos() - chunk.get(0).nanos()) * STRETCH));
        }
        return counter.most();
    }
}
