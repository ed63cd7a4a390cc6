package dev.lampwright.page;

import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/** All viewers of one page. */
final class Viewers {
    private static final long LONGEST_WRITE_NANOS = TimeUnit.SECONDS.toNanos(10);

    private final Map<Viewer, Boolean> present = new ConcurrentHashMap<>();

    /** All of them. */
    Set<Viewer> all() {
        return Set.copyOf(present.keySet());
    }

    /** The number of viewers. */
    int count() {
        return present.size();
    }

    /** Someone begins to watch. */
    void add(Viewer viewer) {
        present.put(viewer, true);
    }

    /** Someone has left. */
    void remove(Viewer viewer) {
        present.remove(viewer);
    }

    /** Informs everybody. */
    void tell(Topic topic, byte[] event) {
        present.keySet().forEach(viewer -> viewer.tell(topic, event));
    }

    /** Disconnects those that have accepted nothing for long, and would block a seat. */
    void dismissStuck() {
        long now = System.nanoTime();
        present.keySet().forEach(viewer -> viewer.dismissIfStuck(LONGEST_WRITE_NANOS, now));
    }

    /** Disconnects everybody. */
    void dismissAll() {
        present.keySet().forEach(Viewer::dismiss);
    }
}
