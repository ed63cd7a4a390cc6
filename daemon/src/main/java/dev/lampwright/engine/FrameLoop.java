package dev.lampwright.engine;

import dev.lampwright.cue.Wishes;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.look.LookFault;
import dev.lampwright.printer.Statuses;
import dev.lampwright.signal.Signal;
import dev.lampwright.upkeep.RigName;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes a frame at every tick, on the thread {@code frames}. Ticks lie on a fixed grid of absolute times, so lateness never adds up; after
 * the machine has slept, missed ticks are skipped. While light stands still it sleeps through the ticks, and catches up afterwards: frames
 * and their times are the same as if it had not slept. Urgent news does not wait for the grid: the next frame is made at once, with that
 * time, unless another one has been made since the last time on the grid. Takes no lock, does no I/O, allocates nothing once warm, except
 * for a record of each early frame.
 */
public final class FrameLoop {
    private static final Logger LOG = LoggerFactory.getLogger(FrameLoop.class);
    private static final long NANOS_PER_SECOND = TimeUnit.SECONDS.toNanos(1);
    private static final long SIGNALS_EVERY = TimeUnit.MILLISECONDS.toNanos(100);
    private static final long LATE_STEP = TimeUnit.MILLISECONDS.toNanos(50);

    private final Supplier<Statuses> latest;
    private final Supplier<Wishes> wishes;
    private final LongSupplier clock;
    private final int framesPerSecond;
    private final Lateness lateness = new Lateness();
    private final Thread thread = new Thread(this::run, RigName.thread("frames"));
    private volatile boolean running = true;
    private volatile boolean urgent;
    private volatile boolean news;
    private volatile boolean resting;
    private final FrameBoard.Figures figures = new FrameBoard.Figures();
    private final FrameBoard board;
    private final StatusWatch watch;
    private final Phase phase;
    private final AtomicReference<Rig> next = new AtomicReference<>();
    private Rig rig;
    private Statuses shown = Statuses.NOTHING_HEARD;
    private Wishes followed = Wishes.NONE;
    private final CountDownLatch dark = new CountDownLatch(1);
    private volatile Duration fade = Duration.ZERO;
    private Optional<Ending> ending = Optional.empty();
    private int faultsTold;
    private long lightFrom;
    private boolean sent;
    private long sentAt;
    private Statuses signalsOf = Statuses.NOTHING_HEARD;
    private long signalsAt;
    private long lateTold;
    private long lateToldAt;
    private boolean failing;

    /**
     * What makes the frames, and where they go.
     *
     * @param chain makes them
     * @param slot where they go
     * @param tap where they can be read
     * @param frameReady called after each frame; must neither block nor allocate
     */
    record Rig(Chain chain, FrameSlot slot, FrameTap tap, Runnable frameReady) {}

    /** Creates a loop that is alone in its process. */
    FrameLoop(
            Rig rig,
            Supplier<Statuses> latest,
            Supplier<Wishes> wishes,
            LongSupplier clock,
            int framesPerSecond,
            StatusWatch watch,
            long lightFrom) {
        this(rig, latest, wishes, clock, framesPerSecond, watch, lightFrom, Phase.AT_ONCE);
    }

    /**
     * Creates a loop that does not run yet.
     *
     * @param rig what makes the frames, and where they go
     * @param latest the slot with the newest statuses
     * @param wishes the slot with what people have asked for
     * @param clock monotonic time in ns, the same as that of the statuses
     * @param framesPerSecond rate, 1 or more
     * @param watch receives which statuses are shown
     * @param lightFrom frames before this time are made but not sent
     * @param phase where in a tick the frames are
     * @throws IllegalArgumentException if the rate is below 1
     */
    FrameLoop(
            Rig rig,
            Supplier<Statuses> latest,
            Supplier<Wishes> wishes,
            LongSupplier clock,
            int framesPerSecond,
            StatusWatch watch,
            long lightFrom,
            Phase phase) {
        this.rig = rig;
        this.phase = phase;
        this.latest = latest;
        this.wishes = wishes;
        this.clock = clock;
        if (framesPerSecond < 1) {
            throw new IllegalArgumentException(framesPerSecond + " frames a second; give 1 or more");
        }
        this.framesPerSecond = framesPerSecond;
        this.watch = watch;
        this.lightFrom = lightFrom;
        figures.ceilingMilliamps = rig.chain.guard().stripCeilingMilliamps();
        figures.follow(rig.chain.followed());
        figures.show(names(rig.chain));
        board = new FrameBoard(figures);
    }

    /**
     * Switches to another rig with the next frame. Its light fades in over what was seen before.
     *
     * @param newRig what makes the frames from then on
     */
    void change(Rig newRig) {
        next.set(newRig);
        tellNews();
    }

    /** Ensures that the next frame is made when it is due, because there is a new status or ask. */
    void tellNews() {
        news = true;
        if (resting) {
            LockSupport.unpark(thread);
        }
    }

    /** Makes the next frame as soon as allowed. */
    void hurry() {
        urgent = true;
        LockSupport.unpark(thread);
    }

    /** Starts the thread. */
    public void start() {
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Fades all light out and waits until it is dark. The guards stay in force.
     *
     * @param duration how long the fade takes, more than 0
     * @param longest how long to wait at most
     */
    void fadeOut(Duration duration, Duration longest) {
        fade = duration;
        tellNews();
        try {
            dark.await(longest.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Ends the thread and waits for it, a second at most. */
    public void close() {
        running = false;
        LockSupport.unpark(thread);
        try {
            thread.join(TimeUnit.SECONDS.toMillis(1));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /**
     * The last frame, and how many there have been.
     *
     * @return everything as of one frame
     */
    public FrameReport snapshot() {
        return board.read(clock.getAsLong(), framesPerSecond, false);
    }

    /**
     * What the strip of the last frame draws. Costs next to nothing, unlike a whole report.
     *
     * @return mA, as estimated
     */
    public int milliamps() {
        return board.milliamps();
    }

    /** The same as {@link #snapshot} with no more signals than an outline needs, which costs less. */
    FrameReport outline() {
        return board.read(clock.getAsLong(), framesPerSecond, true);
    }

    /**
     * How late the ticks were.
     *
     * @return the same each time
     */
    public Lateness lateness() {
        return lateness;
    }

    private void run() {
        long start = phase.start(clock.getAsLong(), framesPerSecond);
        long tick = 0;
        watch.start(start);
        while (running) {
            tick = rest(tick, start);
            long deadline = start + Ticks.nanos(tick, framesPerSecond);
            waitUntil(tick == 0 ? deadline : start + Ticks.nanos(tick - 1, framesPerSecond) + 1, deadline);
            if (running) {
                makeFrameBy(tick, deadline);
                tick = nextTick(tick, clock.getAsLong() - start);
            }
        }
    }

    /**
     * Sleeps while frames are certain to be the same, until one must be sent or there is news. Then catches up on those that were due in
     * the meantime, since guards count them.
     *
     * @return the next frame to be made
     */
    private long rest(long tick, long start) {
        long rested = restingFrames(tick, start);
        if (rested == 0) {
            return tick;
        }
        long end = start + Ticks.nanos(tick + rested, framesPerSecond);
        figures.restFrom = start + Ticks.nanos(tick, framesPerSecond);
        figures.restFrames = rested;
        board.write(figures);
        waitForNews(end);
        long now = clock.getAsLong();
        long next = tick;
        while (next < tick + rested && start + Ticks.nanos(next, framesPerSecond) - now <= 0) {
            long nanos = start + Ticks.nanos(next, framesPerSecond);
            send(rig.chain.make(shown, followed, nanos, rig.slot.back()), nanos);
            next++;
        }
        figures.frames += next - tick;
        figures.restFrames = 0;
        board.write(figures);
        return next;
    }

    /** How many frames from a given one on are certain to be the same as the last one and need not be sent. */
    private long restingFrames(long tick, long start) {
        boolean mayRest = tick > 0 && sent && !failing && !news && !urgent && ending.isEmpty() && !rig.tap.isAwaited();
        if (!mayRest) {
            return 0;
        }
        long last = start + Ticks.nanos(tick - 1, framesPerSecond);
        long untilSent = sentAt + rig.chain.keepAliveNanos() - last;
        long still = Math.min(untilSent, rig.chain.restNanos(last));
        return still <= 0 ? 0 : Math.max(0, Ticks.at(last + still - 1 - start, framesPerSecond) - tick + 1);
    }

    private void waitForNews(long end) {
        resting = true;
        long left = end - clock.getAsLong();
        while (running && !news && !urgent && left > 0) {
            LockSupport.parkNanos(this, left);
            left = end - clock.getAsLong();
        }
        resting = false;
    }

    private void makeFrameBy(long tick, long deadline) {
        urgent = false;
        news = false;
        long now = clock.getAsLong();
        long nanos = Math.min(now, deadline);
        lateness.add(now - nanos);
        if (nanos < deadline) {
            watch.early(new Early(tick, deadline - nanos));
        }
        makeFrame(tick, nanos);
    }

    private void makeFrame(long tick, long nanos) {
        Statuses status = latest.get();
        if (status != shown) {
            shown = status;
            watch.shown(tick, status);
        }
        Wishes wished = wishes.get().at(nanos);
        if (wished != followed) {
            followed = wished;
            watch.asked(tick, wished);
        }
        boolean differs;
        try {
            changeRig(nanos);
            follow(tick, nanos);
            beginEnding(nanos);
            differs = rig.chain.make(status, wished, nanos, rig.slot.back());
        } catch (RuntimeException e) {
            if (!failing) {
                failing = true;
                LOG.error("a frame could not be made; the strip keeps the previous one", e);
            }
            return;
        }
        failing = false;
        rig.tap.leave(rig.slot.back());
        send(differs, nanos);
        if (ending.isPresent() && ending.get().isOver(nanos)) {
            dark.countDown();
        }
        tellFaults();
        note(nanos);
    }

    /** A frame that is the same as the one before is sent only now and then. */
    private void send(boolean differs, long nanos) {
        boolean due = differs || !sent || nanos - sentAt >= rig.chain.keepAliveNanos();
        if (due && nanos - lightFrom >= 0) {
            sent = true;
            sentAt = nanos;
            rig.slot.publish(nanos);
            rig.frameReady.run();
        } else if (differs) {
            sent = false;
        }
    }

    private void note(long nanos) {
        Chain chain = rig.chain;
        List<FollowedPrinter> printers = chain.printers();
        for (int i = 0; i < printers.size(); i++) {
            FollowedPrinter printer = printers.get(i);
            figures.states[i] = printer.state();
            figures.alarms[i] = printer.alarm();
            figures.faultsLast[i] = printer.faultLasts();
            figures.looks[i] = chain.lookOf(printer);
        }
        figures.milliamps = chain.guard().stripMilliamps();
        figures.ceilingMilliamps = chain.guard().stripCeilingMilliamps();
        figures.mostMilliamps = Math.max(figures.mostMilliamps, figures.milliamps);
        figures.dimmedFrames = chain.guard().dimmedFrames();
        figures.heldFrames = chain.guard().heldFrames();
        noteSignals(nanos);
        figures.frames++;
        board.write(figures);
    }

    private static List<String> names(Chain chain) {
        return chain.printers().stream().map(FollowedPrinter::name).toList();
    }

    /** Only as often as anybody reads them, because the light does not need it. */
    private void noteSignals(long nanos) {
        if (signalsOf == shown && nanos - signalsAt < SIGNALS_EVERY) {
            return;
        }
        signalsOf = shown;
        signalsAt = nanos;
        List<Signal> followed = figures.signals;
        for (int i = 0; i < followed.size(); i++) {
            figures.values[i] = rig.chain.signal(followed.get(i), nanos);
        }
    }

    /** If nobody knows how the light has flickered so far, it must be left alone for a second, so that no flash is missed. */
    private void changeRig(long nanos) {
        Rig newest = next.getAndSet(null);
        if (newest != null) {
            boolean known = newest.chain.takeOver(rig.chain);
            lightFrom = known ? lightFrom : nanos + NANOS_PER_SECOND;
            rig = newest;
            figures.follow(rig.chain.followed());
            figures.show(names(rig.chain));
            signalsAt = nanos - SIGNALS_EVERY;
            sent = false;
            faultsTold = 0;
            lateTold = 0;
        }
    }

    /** Passes on what happened to frames: lateness in steps, and seldom more than once a second, since it may last. */
    private void follow(long tick, long nanos) {
        long late = rig.slot.deliveries().takeLatest();
        boolean relit = rig.slot.deliveries().takeRelit();
        boolean tell = late > Chain.USUALLY_LATE_NANOS && (late > lateTold || nanos - lateToldAt > NANOS_PER_SECOND);
        if (tell) {
            lateTold = (late / LATE_STEP + 1) * LATE_STEP;
            lateToldAt = nanos;
        }
        if (tell || relit) {
            Delivery delivery = new Delivery(tick, tell ? lateTold : 0, relit);
            rig.chain.delivered(delivery);
            watch.delivered(delivery);
        }
    }

    private void beginEnding(long nanos) {
        if (ending.isEmpty() && !fade.isZero()) {
            Ending begins = new Ending(nanos, fade.toNanos());
            ending = Optional.of(begins);
            rig.chain.end(begins);
        }
    }

    private void tellFaults() {
        List<LookFault> faults = rig.chain.faults();
        for (; faultsTold < faults.size(); faultsTold++) {
            LookFault fault = faults.get(faultsTold);
            LOG.error(
                    "looks.{}.{} cannot be drawn: {}; it stays dark until the configuration is read again; everything else carries on",
                    fault.look(),
                    fault.part(),
                    fault.why());
        }
    }

    /** Waits for a time, or only for an earlier one if there is something urgent. */
    private void waitUntil(long earliest, long deadline) {
        long left = deadline - clock.getAsLong();
        while (running && left > 0) {
            LockSupport.parkNanos(this, left);
            left = (urgent ? earliest : deadline) - clock.getAsLong();
        }
    }

    private long nextTick(long tick, long elapsed) {
        long next = tick + 1;
        long newest = Ticks.at(elapsed, framesPerSecond);
        if (newest > next) {
            figures.skipped += newest - next;
            board.write(figures);
            watch.leftOut(next, newest - next);
            return newest;
        }
        return next;
    }
}
