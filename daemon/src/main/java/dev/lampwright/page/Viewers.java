package dev.lampwright.page;

import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/** All viewers of one page. */
final class Viewers {
    private static final long LONGEST_WRITE_NANOS = TimeUnit.SECONDS.toNanos(10);

    private final Map<Viewer, Boolean> present = new ConcurrentHashMap<>();
    private volatile boolean closed;

    /** All of them. */
    Set<Viewer> all() {
        return Set.copyOf(present.keySet());
    }

    /** The number of viewers. */
    int count() {
        return present.size();
    }

    /** Someone begins to watch, or is sent away if the page has closed by now. */
    void add(Viewer viewer) {
        present.put(viewer, true);
        if (closed) {
            viewer.dismiss();
        }
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

    /** The page closes: disconnects everybody, and whoever is only just let in. */
    void dismissAll() {
        closed = true;
        present.keySet().forEach(Viewer::dismiss);
    }
}
