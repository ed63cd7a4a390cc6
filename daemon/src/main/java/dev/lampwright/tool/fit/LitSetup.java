package dev.lampwright.tool.fit;

import dev.lampwright.link.ControllerLink;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.link.Line;
import dev.lampwright.link.LinkState;
import dev.lampwright.link.LinkStatus;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import dev.lampwright.upkeep.Worker;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * A controller with one set-up, which shows one scene after the other: a thread, {@code fitting}, makes frames and passes them to the link
 * repeatedly, so that a controller that comes back is lit at once.
 */
final class LitSetup implements AutoCloseable {
    private static final int FRAMES_PER_SECOND = 30;
    private static final long FRAME_NANOS = TimeUnit.SECONDS.toNanos(1) / FRAMES_PER_SECOND;
    private static final double NANOS_PER_SECOND = 1e9;
    private static final Duration CLOSE = Duration.ofMillis(200);
    private static final long UNSETTLED = -1;
    private static final String PORT = "port";

    /** The controller's counters are modulo this plus one. */
    private static final int COUNTER = 0xFFFF;

    /** What to show, and the result. */
    private static final class Showing {
        final Scene scene;
        final long begun;
        /** How many frames had been shown when the first frame without any hold was sent; −1 before. */
        volatile long shownBefore = UNSETTLED;

        volatile boolean shown;
        volatile boolean disturbed;
        volatile Optional<Phrase> disturbance = Optional.empty();
        volatile int overrunsBefore;

        Showing(Scene scene, long begun) {
            this.scene = scene;
            this.begun = begun;
        }
    }

    private final Setup setup;
    private final long id;
    private final LongSupplier clock;
    private final GuardedFrames frames;
    private final FrameSlot slot;
    private final ControllerLink link;
    private final Worker worker = Worker.paced("fitting", Duration.ofNanos(FRAME_NANOS), this::makeFrame);
    private volatile Showing showing;

    /**
     * Creates one that is not started.
     *
     * @param line the line to the controller
     * @param setup its set-up
     * @param id the id that the controller must have, or 0
     * @param nanoClock a clock in ns that never goes back
     */
    LitSetup(Line line, Setup setup, long id, LongSupplier nanoClock) {
        this.setup = setup;
        this.id = id;
        clock = nanoClock;
        frames = new GuardedFrames(setup, FRAMES_PER_SECOND);
        slot = new FrameSlot(setup.stripBytes(), setup.dimmers().size());
        link = new ControllerLink(line, setup, slot, nanoClock);
        showing = new Showing(Scene.DARK, nanoClock.getAsLong());
    }

    void start() {
        link.start();
        worker.start();
    }

    Setup setup() {
        return setup;
    }

    void show(Scene scene) {
        showing = new Showing(scene, clock.getAsLong());
    }

    /** Whether the controller reports that it shows the scene, without any hold. From then on the light counts as steady. */
    boolean shows() {
        LinkStatus status = link.status();
        long before = showing.shownBefore;
        if (before != UNSETTLED && status.framesShown() - before > underWay(status) && isRight(status)) {
            showing.overrunsBefore = status.overruns();
            showing.shown = true;
        }
        return showing.shown;
    }

    /** Whether the controller has been connected ever since {@link #shows} was true. */
    boolean steady() {
        return showing.shown && !showing.disturbed && isRight(link.status());
    }

    /** What is wrong; empty if the scene is shown. */
    Optional<Phrase> trouble() {
        return steady() ? Optional.empty() : Optional.of(trouble(link.status()));
    }

    /** What is wrong with the connection now; empty if nothing is. */
    Optional<Phrase> missing() {
        LinkStatus status = link.status();
        return isRight(status) ? Optional.empty() : Optional.of(trouble(status));
    }

    private Phrase trouble(LinkStatus status) {
        if (status.state() == LinkState.LIT && !isRight(status)) {
            return Phrase.of(
                    "other_board",
                    "another controller is at " + status.port() + " now: plug the previous one in again",
                    PORT,
                    status.port());
        }
        return status.trouble().isEmpty()
                ? Phrase.of(
                        "not_shown_yet",
                        "the controller on " + status.port() + " does not show it yet",
                        PORT,
                        status.port())
                : status.cause();
    }

    /** What disturbed the scene after it was shown. */
    Optional<Phrase> disturbance() {
        return showing.disturbance;
    }

    private static Phrase why(Showing now, LinkStatus status) {
        if (status.overruns() != now.overrunsBefore) {
            int count = status.overruns() - now.overrunsBefore & COUNTER;
            return Phrase.of(
                    "overruns",
                    "the controller on " + status.port() + " missed bytes (it counts " + count
                            + " overruns), because bytes arrive faster than it"
                            + " can take them: use a lower baud in its firmware and with --baud, or fewer pixels",
                    PORT,
                    status.port(),
                    "count",
                    count);
        }
        return status.trouble().isEmpty()
                ? Phrase.of(
                        "was_away",
                        "the controller on " + status.port() + " was disconnected for a moment",
                        PORT,
                        status.port())
                : Phrase.of(
                        "was_away_because",
                        "the controller on " + status.port() + " was disconnected for a moment: " + status.trouble(),
                        PORT,
                        status.port(),
                        "why",
                        status.cause());
    }

    @Override
    public void close() {
        worker.end(CLOSE);
        link.close();
    }

    /** Makes a frame, and returns how long to wait until the next, in ns. */
    private long makeFrame() {
        Showing now = showing;
        long nanos = clock.getAsLong();
        boolean asIs = frames.make(now.scene, (nanos - now.begun) / NANOS_PER_SECOND, nanos, slot.back());
        LinkStatus status = link.status();
        if (asIs && now.shownBefore == UNSETTLED) {
            now.shownBefore = status.framesShown();
        }
        slot.publish();
        link.frameReady();
        if (now.shown && !isRight(status) && !now.disturbed) {
            now.disturbance = Optional.of(why(now, status));
            now.disturbed = true;
        }
        return FRAME_NANOS - (clock.getAsLong() - nanos);
    }

    private boolean isRight(LinkStatus status) {
        return status.state() == LinkState.LIT
                && (id == 0 || status.controller().map(Here::id).orElse(0L) == id);
    }

    /** Frames that may have been sent earlier and whose answer may still come. */
    private static int underWay(LinkStatus status) {
        return status.controller().map(Here::credits).orElse(1) + 1;
    }
}
