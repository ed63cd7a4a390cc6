package dev.lampwright.printer;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Topic filters of MQTT 3.1.1, section 4.7. */
public final class TopicFilter {
    private static final int MOST_BYTES = 65535;

    private TopicFilter() {}

    /**
     * What keeps a text from being a topic filter.
     *
     * @param filter text to look at
     * @return a few words that say what is wrong, to stand after a colon; empty if it is a topic filter
     */
    public static Optional<String> problem(String filter) {
        if (filter.isEmpty()) {
            return Optional.of("it is empty");
        }
        if (filter.indexOf('\0') >= 0) {
            return Optional.of("it has a null character");
        }
        if (filter.getBytes(StandardCharsets.UTF_8).length > MOST_BYTES) {
            return Optional.of("it is longer than 65535 bytes");
        }
        return wildcardProblem(filter.split("/", -1));
    }

    private static Optional<String> wildcardProblem(String[] levels) {
        for (int i = 0; i < levels.length; i++) {
            String level = levels[i];
            if (level.length() > 1 && (level.contains("+") || level.contains("#"))) {
                return Optional.of("+ and # must stand alone between slashes");
            }
            if (level.equals("#") && i < levels.length - 1) {
                return Optional.of("# must come last");
            }
        }
        return Optional.empty();
    }
}
