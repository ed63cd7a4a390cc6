package dev.lampwright.tool.survey;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Topics with a level that is the id of a job or of a message: one id after another, and none returns. The next one will differ, so
 * {@code +} replaces it. Ids that alternate belong to several things and stay. Remembers a bounded number of topics and ids.
 */
final class PassingIds {
    private static final Pattern ID = Pattern.compile("[0-9]{3,}|[0-9a-fA-F]{4,}(?:-?[0-9a-fA-F]{4,})+");
    private static final int MOST_TOPICS = 256;
    private static final int MOST_IDS = 64;
    private static final int ENOUGH_MESSAGES = 5;
    private static final int ENOUGH_IDS = 8;

    /** At first the broker sends what it has retained, in any order. */
    private static final double BEGINNING_S = 2;

    private final Map<String, Group> groups = new HashMap<>();

    private static final class Group {
        private final Set<String> gone = new HashSet<>();
        private String newest = "";
        private int messages;
        private boolean several;
        private boolean passing;

        boolean take(String id, double second) {
            if (several || passing) {
                return passing;
            }
            if (!id.equals(newest)) {
                several = gone.contains(id) && second > BEGINNING_S;
                if (!newest.isEmpty() && gone.size() < MOST_IDS) {
                    gone.add(newest);
                }
                gone.remove(id);
                newest = id;
                messages = 0;
            }
            messages++;
            boolean enough = second > BEGINNING_S && (messages >= ENOUGH_MESSAGES || gone.size() >= ENOUGH_IDS);
            passing = !several && !gone.isEmpty() && enough;
            return passing;
        }
    }

    /**
     * A topic without its changing id.
     *
     * @param topic a topic on which a message has come
     * @param second when, in s
     * @return the topic with {@code +} in place of the id; empty if it has none, as far as is known
     */
    Optional<String> without(String topic, double second) {
        String[] levels = topic.split("/", -1);
        for (int i = levels.length - 1; i > 0; i--) {
            if (ID.matcher(levels[i]).matches()) {
                String id = levels[i];
                levels[i] = "+";
                return passes(String.join("/", levels), id, second);
            }
        }
        return Optional.empty();
    }

    private Optional<String> passes(String folded, String id, double second) {
        if (!groups.containsKey(folded) && groups.size() >= MOST_TOPICS) {
            return Optional.empty();
        }
        boolean passing = groups.computeIfAbsent(folded, any -> new Group()).take(id, second);
        return passing ? Optional.of(folded) : Optional.empty();
    }
}
