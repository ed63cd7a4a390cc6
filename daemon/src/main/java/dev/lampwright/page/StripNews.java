package dev.lampwright.page;

import dev.lampwright.json.JsonObject;
import java.util.Base64;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The newest colours of all strips, and which viewer has not been sent which of them: one whose last message still waits gets all that is
 * new by then, later. For one thread at a time.
 */
final class StripNews {
    private final Map<Integer, String> newest = new TreeMap<>();
    private final Set<Integer> changed = new HashSet<>();
    private final Map<Viewer, Set<Integer>> owed = new HashMap<>();

    /** A strip shows other colours. */
    void put(int id, byte[] rgb) {
        newest.put(id, Base64.getEncoder().encodeToString(rgb));
        changed.add(id);
    }

    /** A strip is gone. */
    void remove(int id) {
        newest.remove(id);
    }

    /** Forgets everything. */
    void clear() {
        newest.clear();
        changed.clear();
        owed.clear();
    }

    /** All strips, for a viewer who has none of them yet. */
    byte[] all() {
        return event(newest.keySet());
    }

    /**
     * Sends each viewer what is new to it.
     *
     * @param viewers who
     * @param anyway whether to send something even if nothing is new, since a page considers a connection lost if it is quiet for long
     */
    void tell(Set<Viewer> viewers, boolean anyway) {
        owed.keySet().retainAll(viewers);
        byte[] usual = changed.isEmpty() && !anyway ? new byte[0] : event(changed);
        for (Viewer viewer : viewers) {
            Set<Integer> mine = owed.computeIfAbsent(viewer, same -> new HashSet<>());
            boolean behind = !mine.isEmpty();
            if (viewer.waits(Topic.STRIPS)) {
                mine.addAll(changed);
            } else if (behind) {
                mine.addAll(changed);
                viewer.tell(Topic.STRIPS, event(mine));
                mine.clear();
            } else if (usual.length > 0) {
                viewer.tell(Topic.STRIPS, usual);
            }
        }
        changed.clear();
    }

    private byte[] event(Set<Integer> ids) {
        JsonObject strips = new JsonObject();
        newest.forEach((id, colours) -> {
            if (ids.contains(id)) {
                strips.put(Integer.toString(id), colours);
            }
        });
        return ServerEvent.of(Topic.STRIPS.word(), strips.text());
    }
}
