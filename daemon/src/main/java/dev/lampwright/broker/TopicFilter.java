package dev.lampwright.broker;

import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** An MQTT topic filter. It matches by MQTT 3.1.1 (OASIS Standard, 29 October 2014), section 4.7. */
public final class TopicFilter {
    private static final int MOST_BYTES = 65_535;
    private static final char SEPARATOR = '/';

    private final String text;

    private TopicFilter(String text) {
        this.text = text;
    }

    /**
     * Reads a filter.
     *
     * @param text the filter as written in the configuration
     * @return the filter
     * @throws IllegalArgumentException if {@link #problem} reports one; the message is that
     */
    public static TopicFilter of(String text) {
        problem(text).ifPresent(complaint -> {
            throw new IllegalArgumentException(complaint);
        });
        return new TopicFilter(text);
    }

    /**
     * What is wrong with a filter.
     *
     * @param filter the filter as written in the configuration
     * @return one clause for the user, empty if the filter is valid
     */
    public static Optional<String> problem(String filter) {
        if (filter.isEmpty()) {
            return Optional.of("a topic has at least one character");
        }
        return lengthProblem(filter).or(() -> characterProblem(filter)).or(() -> wildcardProblem(filter));
    }

    /**
     * What is wrong with the name of a topic to publish on.
     *
     * @param topic the name
     * @return one clause for the user, empty if the name is valid
     */
    public static Optional<String> nameProblem(String topic) {
        return topic.contains("+") || topic.contains("#")
                ? Optional.of("a topic to publish on has neither + nor #, which are wildcards")
                : problem(topic);
    }

    private static Optional<String> lengthProblem(String filter) {
        try {
            int bytes = StandardCharsets.UTF_8
                    .newEncoder()
                    .encode(CharBuffer.wrap(filter))
                    .remaining();
            return bytes > MOST_BYTES
                    ? Optional.of("a topic has at most " + MOST_BYTES + " bytes, this one has " + bytes)
                    : Optional.empty();
        } catch (CharacterCodingException e) {
            return Optional.of("a topic is Unicode text, this one has half a character");
        }
    }

    private static Optional<String> characterProblem(String filter) {
        return filter.indexOf('\0') >= 0 ? Optional.of("a topic has no zero character") : Optional.empty();
    }

    private static Optional<String> wildcardProblem(String filter) {
        int start = 0;
        while (start <= filter.length()) {
            int end = levelEnd(filter, start);
            String level = filter.substring(start, end);
            if (level.length() > 1 && (level.contains("+") || level.contains("#"))) {
                return Optional.of("a wildcard stands alone between slashes, not as in \"" + level + "\"");
            }
            if (level.equals("#") && end < filter.length()) {
                return Optional.of("nothing comes after the wildcard #");
            }
            start = end + 1;
        }
        return Optional.empty();
    }

    /**
     * Whether a topic matches.
     *
     * @param topic the topic of a message, without wildcards
     * @return true if it matches
     */
    public boolean matches(String topic) {
        if (topic.startsWith("$") && (text.startsWith("+") || text.startsWith("#"))) {
            return false;
        }
        int inFilter = 0;
        int inTopic = 0;
        while (true) {
            if (isAnyDepth(inFilter)) {
                return true;
            }
            int filterEnd = levelEnd(text, inFilter);
            int topicEnd = levelEnd(topic, inTopic);
            if (!isAnyLevel(inFilter, filterEnd) && !sameLevel(inFilter, filterEnd, topic, inTopic, topicEnd)) {
                return false;
            }
            if (topicEnd == topic.length()) {
                return filterEnd == text.length() || isAnyDepth(filterEnd + 1);
            }
            if (filterEnd == text.length()) {
                return false;
            }
            inFilter = filterEnd + 1;
            inTopic = topicEnd + 1;
        }
    }

    private boolean isAnyDepth(int start) {
        return start < text.length() && text.charAt(start) == '#';
    }

    private boolean isAnyLevel(int start, int end) {
        return end == start + 1 && text.charAt(start) == '+';
    }

    private boolean sameLevel(int start, int end, String topic, int topicStart, int topicEnd) {
        return end - start == topicEnd - topicStart && text.regionMatches(start, topic, topicStart, end - start);
    }

    private static int levelEnd(String text, int start) {
        int end = text.indexOf(SEPARATOR, start);
        return end < 0 ? text.length() : end;
    }

    @Override
    public String toString() {
        return text;
    }
}
