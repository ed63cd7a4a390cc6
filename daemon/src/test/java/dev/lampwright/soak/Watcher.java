package dev.lampwright.soak;

import dev.lampwright.testing.CeilingCheck;
import dev.lampwright.testing.FlashCheck;
import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.Recording.Entry;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Watches everything that the controller shows, all the time, on its own thread. May be used by several threads. */
final class Watcher implements AutoCloseable {
    private static final long LOOK_EVERY = TimeUnit.MILLISECONDS.toNanos(20);
    private static final long WORTH_A_HOLDOVER = TimeUnit.SECONDS.toNanos(1);
    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);

    private final FarEnd controller;
    private final Heartbeat heartbeat;
    private final Violations violations;
    private final CeilingCheck ceiling = new CeilingCheck(Rowan.SETUP);
    private final FlashCheck flashes;
    private final Thread thread = new Thread(this::run, "watcher");
    private volatile boolean closed;
    private Optional<Marker> wanted = Optional.empty();
    private Optional<Entry> last = Optional.empty();
    private long wantedFrom;
    private OptionalLong rightSince = OptionalLong.empty();
    private boolean calm;
    private long frames;
    private long ownFrames;

    Watcher(FarEnd controller, Heartbeat heartbeat, Violations violations) {
        this.controller = controller;
        this.heartbeat = heartbeat;
        this.violations = violations;
        flashes = new FlashCheck(Rowan.SETUP, Rowan.FITTING, Rowan.VOLTS, heartbeat);
    }

    /** Starts to look. */
    void start() {
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Sets what should be shown.
     *
     * @param marker the content
     * @param fromNanos frames before this do not count
     */
    synchronized void want(Marker marker, long fromNanos) {
        look();
        wanted = Optional.of(marker);
        wantedFrom = fromNanos;
        calm = false;
        rightSince = OptionalLong.empty();
    }

    /** Since when the wanted light has been shown; empty if it is not. */
    synchronized OptionalLong rightSince() {
        return rightSince;
    }

    /** From now on, until something else is wanted or there is trouble, nothing else must be shown. */
    synchronized void expectCalm() {
        calm = true;
    }

    /** Trouble begins. */
    synchronized void expectTrouble() {
        calm = false;
    }

    /** Frames of the host that were judged. */
    synchronized long frames() {
        return frames;
    }

    /** Frames that the controller showed by itself. */
    synchronized long ownFrames() {
        return ownFrames;
    }

    /** The highest current of the strip's supply, in mA. */
    synchronized long mostMilliamps() {
        return ceiling.mostMilliamps();
    }

    /** Stretches of four seconds that were judged for flashes, and those of them that could not be. */
    synchronized String flashStretches() {
        return flashes.judged() + " stretches of 4 s, " + flashes.inconclusive() + " of them inconclusive";
    }

    /** What is shown now. */
    synchronized String shown() {
        return last.toString();
    }

    private void run() {
        while (!closed) {
            look();
            LockSupport.parkNanos(LOOK_EVERY);
        }
        look();
    }

    private synchronized void look() {
        controller.drain(violations::add).forEach(this::judge);
    }

    private void judge(Entry shown) {
        ceiling.judge(shown).ifPresent(violations::add);
        if (shown.fromHost()) {
            frames++;
            flashes.judge(shown).ifPresent(violations::add);
        } else {
            ownFrames++;
        }
        last = Optional.of(shown);
        boolean right = isRight(shown);
        if (right && rightSince.isEmpty()) {
            rightSince = OptionalLong.of(shown.nanos());
        } else if (!right) {
            rightSince = OptionalLong.empty();
            disturb(shown);
        }
    }

    private boolean isRight(Entry shown) {
        return shown.fromHost()
                && shown.nanos() - wantedFrom >= 0
                && wanted.map(marker -> marker.isOn(shown.strip())).orElse(false);
    }

    private void disturb(Entry shown) {
        boolean machineStoodStill = heartbeat.sumBetween(shown.nanos() - 3 * SECOND, shown.nanos()) > WORTH_A_HOLDOVER;
        if (calm && !machineStoodStill) {
            violations.add("not " + wanted.orElseThrow() + " while all was calm: " + shown);
        }
    }

    @Override
    public void close() {
        closed = true;
        LockSupport.unpark(thread);
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
