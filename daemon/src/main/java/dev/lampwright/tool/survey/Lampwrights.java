package dev.lampwright.tool.survey;

import dev.lampwright.broker.OwnTopics;
import dev.lampwright.payload.Leaf;
import dev.lampwright.payload.Leaves;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The lampwrights that speak at a broker, so that none is taken for a printer. One is known by the keys of its status, whatever its prefix. No more
 * than {@link #MOST} are kept.
 */
final class Lampwrights {
    /** So many are kept at most. */
    static final int MOST = 64;

    private static final String STATUS = new OwnTopics("").status();
    private static final String ONLINE = "/online";

    /** Some of the keys of a status; together nobody else has them. */
    private static final Set<String> KEYS =
            Set.of(ONLINE, "/version", "/state", "/look", "/brightness", "/quiet", "/strip_mA", "/ceiling_mA", "/link");

    /** All the keys of the status of one that is gone. */
    private static final Set<String> KEYS_WHEN_GONE = Set.of(ONLINE, "/why", "/version");

    private static final Set<String> REASONS_TO_GO = Set.of("lost", "stopped");

    private final Map<String, OwnTopics> topics = new TreeMap<>();

    /**
     * Looks whether a message is the status of a lampwright.
     *
     * @param topic its topic
     * @param leaves its values
     * @return true if it is, and that one was not known before
     */
    boolean meet(String topic, Leaves leaves) {
        if (!topic.endsWith(STATUS) || topics.size() >= MOST || !isStatus(leaves)) {
            return false;
        }
        String prefix = topic.substring(0, topic.length() - STATUS.length());
        return topics.putIfAbsent(prefix, new OwnTopics(prefix)) == null;
    }

    private static boolean isStatus(Leaves leaves) {
        Map<String, String> values = leaves.list().stream()
                .collect(Collectors.toMap(leaf -> leaf.path().toString(), Leaf::text, (one, other) -> one));
        boolean gone = values.keySet().equals(KEYS_WHEN_GONE) && REASONS_TO_GO.contains(values.get("/why"));
        return gone || values.keySet().containsAll(KEYS);
    }

    /** Whether a topic is where one of them tells how it does, is asked, or answers. */
    boolean own(String topic) {
        return topics.values().stream().anyMatch(own -> own(own, topic));
    }

    private static boolean own(OwnTopics own, String topic) {
        return topic.equals(own.status()) || topic.equals(own.answer()) || topic.startsWith(own.ask(""));
    }

    /** The beginnings of their topics, in order. */
    List<String> prefixes() {
        return List.copyOf(topics.keySet());
    }
}
