package dev.lampwright.page;

import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/** All who watch one page. */
final class Viewers {
    private static final long LONGEST_WRITE_NANOS = TimeUnit.SECONDS.toNanos(10);

    private final Map<Viewer, Boolean> present = new ConcurrentHashMap<>();

    /** All of them. */
    Set<Viewer> all() {
        return Set.copyOf(present.keySet());
    }

    /** How many watch. */
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

    /** Tells everybody. */
    void tell(Topic topic, byte[] event) {
        present.keySet().forEach(viewer -> viewer.tell(topic, event));
    }

    /** Sends away those who have taken nothing for long, and would keep a seat for nobody. */
    void dismissStuck() {
        long now = System.nanoTime();
        present.keySet().forEach(viewer -> viewer.dismissIfStuck(LONGEST_WRITE_NANOS, now));
    }

    /** Sends everybody away. */
    void dismissAll() {
        present.keySet().forEach(Viewer::dismiss);
    }
}
