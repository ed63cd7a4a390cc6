package dev.lampwright.soak;

import dev.lampwright.guard.EverySecond;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Recording.Entry;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Does the light flash more than three times in a second? Judged by {@link EverySecond}, which counts as WCAG 2.2 says and shares
 * nothing with the guard. Frames are timed where they are shown, which is up to some tens of ms after their time: the window is
 * shorter than a second by that, and where this machine stood still for longer the second is not judged.
 */
final class FlashCheck {
    /** By how much the line, the pipes and the machine may move frames together. Measured, no source. */
    static final long SLACK_NANOS = TimeUnit.MILLISECONDS.toNanos(60);

    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);
    private static final long CHUNK = 4 * SECOND;
    private static final double STRETCH = (double) SECOND / (SECOND - SLACK_NANOS);
    private static final int MOST = 3;
    private static final List<Double> VOLTS = List.of(5.0, 24.0);
    private static final Setup SETUP = new Setup(
            Rowan.PIXELS,
            "GRB",
            Collections.nCopies(3, Rowan.CHANNEL_MICROAMPS),
            Rowan.DARK_MICROAMPS,
            0,
            3000,
            WhenSilent.DARK,
            List.of(Rowan.CEILING_MILLIAMPS, Rowan.WORK_CEILING_MILLIAMPS),
            List.of(new Setup.Dimmer(1, Rowan.WORK_MILLIAMPS, 0)));
    private static final Fitting FITTING = new Fitting(
            Rowan.PIXELS,
            Map.of("edition", Zone.run(0, Rowan.EDITION_PIXELS - 1)),
            List.of(Fitting.DimmerUse.white("work")));

    private final Heartbeat heartbeat;
    private final List<Entry> chunk = new ArrayList<>();
    private long judged;
    private long inconclusive;

    FlashCheck(Heartbeat heartbeat) {
        this.heartbeat = heartbeat;
    }

    /**
     * Judges what is shown, together with what was shown before.
     *
     * @param shown a frame of the host
     * @return what is wrong, if anything is; some seconds late
     */
    Optional<String> judge(Entry shown) {
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

    /** Stretches of four seconds judged. */
    long judged() {
        return judged;
    }

    /** Of them, those with too many flashes, but on a machine that stood still meanwhile. */
    long inconclusive() {
        return inconclusive;
    }

    private int mostFlashes() {
        EverySecond counter = new EverySecond(SETUP, FITTING, VOLTS);
        Frame frame = new Frame(SETUP.stripBytes(), 1);
        for (Entry entry : chunk) {
            for (int i = 0; i < frame.strip().length; i++) {
                frame.strip()[i] = entry.strip().get(i).byteValue();
            }
            frame.duties()[0] = entry.duties().get(0);
            counter.see(frame, Math.round((entry.nanos() - chunk.get(0).nanos()) * STRETCH));
        }
        return counter.most();
    }
}
