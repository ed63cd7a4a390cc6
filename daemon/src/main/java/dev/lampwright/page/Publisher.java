package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.desk.Report;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.FrameTap;
import dev.lampwright.engine.Release;
import dev.lampwright.protocol.Frame;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Worker;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Observes the daemon twenty times a second, on the thread {@code page}, and sends news to all viewers; each event is formatted once.
 * Without viewers it only records the current.
 */
final class Publisher implements PageHandler.Stream, AutoCloseable {
    private static final Duration LOOK_EVERY = Duration.ofMillis(50);
    /** With many rigs, nobody watches most of them. */
    private static final Duration GLANCE_EVERY = Duration.ofMillis(250);

    private static final long NANOS_PER_MILLI = TimeUnit.MILLISECONDS.toNanos(1);
    private static final long SECOND = TimeUnit.SECONDS.toNanos(1);
    /** How many seconds of current go with each event, so that a viewer who misses one has no gap. */
    private static final int OVERLAP_S = 5;

    private final Daemon daemon;
    private final Viewers viewers;
    private final TroubleLog troubles;
    private final CurrentHistory history = new CurrentHistory();
    /** Distinguishes this run's events from those of another, whose seconds are counted from another start. */
    private final String run = Long.toString(System.currentTimeMillis(), Character.MAX_RADIX);

    private final Map<Topic, byte[]> newest = new EnumMap<>(Topic.class);
    private final Worker worker = Worker.paced("page", LOOK_EVERY, this::look, this::leaveFramesAlone);
    private final boolean oneOfSeveral = !RigName.current().isEmpty();
    private FrameTap tap;
    private Optional<FrameTap.Place> place = Optional.empty();
    private FrameMessage frames;
    private int layout;
    private volatile boolean watched;
    private int most;
    private long secondEndsNanos;
    private Report told;
    private long toldNanos;
    private long toldTroubles = -1;

    /**
     * Creates a publisher that does not run yet.
     *
     * @param daemon the daemon to observe
     * @param viewers the viewers
     * @param troubles the log's latest problems
     */
    Publisher(Daemon daemon, Viewers viewers, TroubleLog troubles) {
        this.daemon = daemon;
        this.viewers = viewers;
        this.troubles = troubles;
    }

    /** Starts the thread. From then on it knows what is fitted, so that everybody receives that first. */
    synchronized void start() {
        followConfiguration();
        secondEndsNanos = System.nanoTime() + SECOND;
        worker.start();
    }

    /** Ends the thread, waits for it, a second at most, and stops reading frames. */
    @Override
    public void close() {
        worker.close();
    }

    @Override
    public synchronized void welcome(Viewer viewer, String lastId) {
        newest.forEach(viewer::tell);
        viewer.tell(Topic.CURRENT, current(firstWanted(lastId)));
        viewers.add(viewer);
    }

    /** The second after the last one received; 0 if that was from another run. */
    private long firstWanted(String lastId) {
        String prefix = run + "-";
        String rest = lastId.startsWith(prefix) ? lastId.substring(prefix.length()) : "";
        return rest.matches("[0-9]{1,12}") ? Long.parseLong(rest) : 0;
    }

    private byte[] current(long from) {
        CurrentHistory.Stretch stretch = history.since(from);
        return ServerEvent.of(Topic.CURRENT.word(), run + "-" + stretch.end(), Messages.current(run, stretch));
    }

    private synchronized void leaveFramesAlone() {
        place.ifPresent(FrameTap.Place::close);
        place = Optional.empty();
    }

    private void lookAtFrames() {
        if (place.isEmpty()) {
            place = Optional.of(tap.open());
        }
    }

    /** Runs one check, and returns how long to wait until the next, in ns. */
    private long look() {
        look(System.nanoTime());
        return (watched || !oneOfSeveral ? LOOK_EVERY : GLANCE_EVERY).toNanos();
    }

    private synchronized void look(long nowNanos) {
        noteCurrent(nowNanos);
        followConfiguration();
        boolean nobodyBefore = !watched;
        watched = viewers.count() > 0;
        if (!watched) {
            leaveFramesAlone();
            forget(Topic.FRAME);
            forget(Topic.REPORT);
            return;
        }
        lookAtFrames();
        lookAtReport(nowNanos, nobodyBefore);
        lookAtTroubles();
        lookAtFrame(nowNanos, nobodyBefore);
    }

    private void noteCurrent(long nowNanos) {
        most = Math.max(most, milliamps());
        while (nowNanos - secondEndsNanos >= 0) {
            history.add(most);
            most = milliamps();
            secondEndsNanos += SECOND;
            if (viewers.count() > 0) {
                viewers.tell(Topic.CURRENT, current(history.end() - OVERLAP_S));
            }
            viewers.dismissStuck();
        }
    }

    private int milliamps() {
        return daemon.frames().milliamps();
    }

    private void followConfiguration() {
        FrameTap now = daemon.tap();
        if (now == tap) {
            return;
        }
        leaveFramesAlone();
        tap = now;
        layout++;
        Config config = tap.config();
        frames = new FrameMessage(layout, config);
        forget(Topic.FRAME);
        tell(Topic.LAYOUT, LayoutMessage.of(layout, Release.version(), oneOfSeveral, config));
    }

    private void lookAtReport(long nowNanos, boolean anyway) {
        Report report = daemon.report();
        if (anyway || report.differsInWord(told) || nowNanos - toldNanos >= SECOND) {
            told = report;
            toldNanos = nowNanos;
            tell(Topic.REPORT, Messages.report(daemon, report));
        }
    }

    private void lookAtTroubles() {
        long count = troubles.count();
        if (count != toldTroubles) {
            toldTroubles = count;
            tell(Topic.TROUBLES, Messages.troubles(troubles.entries()));
        }
    }

    private void lookAtFrame(long nowNanos, boolean anyway) {
        if (place.isEmpty() || !place.get().fresh()) {
            return;
        }
        String look = daemon.frames().snapshot().look();
        Frame frame = place.get().take();
        if (anyway || !newest.containsKey(Topic.FRAME) || frames.isNew(frame, look)) {
            tell(Topic.FRAME, frames.of(frame, look, nowNanos / NANOS_PER_MILLI));
        }
    }

    private void tell(Topic topic, String message) {
        byte[] event = ServerEvent.of(topic.word(), message);
        newest.put(topic, event);
        viewers.tell(topic, event);
    }

    private void forget(Topic topic) {
        newest.remove(topic);
    }
}
