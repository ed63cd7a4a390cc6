package dev.lampwright.tool.survey;

import dev.lampwright.broker.OwnTopics;
import dev.lampwright.desk.Signature;
import dev.lampwright.payload.Leaves;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The lampwrights that report to a broker, so that none is mistaken for a printer. Each is recognised by the program name in its status,
 * whatever its prefix. No more than {@link #MOST} are kept.
 */
final class Lampwrights {
    /** The maximum number kept. */
    static final int MOST = 64;

    private static final String STATUS = new OwnTopics("").status();
    private static final String PROGRAM = "/program";

    private final Map<String, OwnTopics> topics = new TreeMap<>();

    /**
     * Checks whether a message is the status of a lampwright.
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
        return leaves.list().stream()
                .anyMatch(leaf ->
                        leaf.path().toString().equals(PROGRAM) && leaf.text().equals(Signature.PROGRAM));
    }

    /** Whether a topic is one on which a lampwright publishes its status, receives asks, or answers. */
    boolean own(String topic) {
        return topics.values().stream().anyMatch(own -> own(own, topic));
    }

    private static boolean own(OwnTopics own, String topic) {
        return topic.equals(own.status()) || topic.equals(own.answer()) || topic.startsWith(own.ask(""));
    }

    /** Their topic prefixes, in order. */
    List<String> prefixes() {
        return List.copyOf(topics.keySet());
    }
}
