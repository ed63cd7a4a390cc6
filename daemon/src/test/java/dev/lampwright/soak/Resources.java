package dev.lampwright.soak;

import dev.lampwright.testing.Flatness;
import dev.lampwright.testing.RunningDaemon;
import java.time.Duration;
import java.util.List;

/** Threads, file descriptors and memory of the daemon, from proc(5), measured in moments of calm. */
final class Resources {
    /**
     * A few more threads or descriptors may exist for a moment: a connection attempt has some. A leak of one per round soon exceeds this.
     * Common practice, no source.
     */
    private static final double TOLERANCE = 3;

    /** The runtime's own tables and compiled code keep growing a little. Common practice, no source. */
    private static final double TOLERANCE_MIB = 8;

    private static final double KIB_A_MIB = 1024;
    private static final double WARM_UP_SHARE = 0.25;
    private static final double MEMORYS_WARM_UP_S = 300;

    private final RunningDaemon daemon;
    private final long started = System.nanoTime();
    private final Flatness threads;
    private final Flatness descriptors;
    private final Flatness memory;

    Resources(RunningDaemon daemon, Duration length) {
        this.daemon = daemon;
        double warmUp = length.toSeconds() * WARM_UP_SHARE;
        threads = new Flatness("threads", TOLERANCE, warmUp);
        descriptors = new Flatness("descriptors", TOLERANCE, warmUp);
        memory = new Flatness("resident MiB", TOLERANCE_MIB, Math.max(warmUp, MEMORYS_WARM_UP_S));
    }

    /** Measures all of them now. */
    void measure() {
        double seconds = (System.nanoTime() - started) * 1e-9;
        threads.add(seconds, daemon.threads().size());
        descriptors.add(seconds, daemon.descriptors().size());
        memory.add(seconds, daemon.residentKibAsItIs() / KIB_A_MIB);
    }

    private List<Flatness> all() {
        return List.of(threads, descriptors, memory);
    }

    /** Judges what was measured. */
    void judge(Violations violations) {
        all().forEach(figure -> figure.judge().ifPresent(violations::add));
    }

    /** A line for each. */
    @Override
    public String toString() {
        return String.join("\n", all().stream().map(figure -> "  " + figure).toList());
    }
}
