package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.util.List;

/**
 * A question as it is put to a terminal.
 *
 * @param words the question
 * @param choices the possible answers; empty if there are too many to list
 * @param help what to say if the user does not know how to answer
 * @param form what an answer looks like
 */
public record Posed(Phrase words, List<Choice> choices, String help, Form form) {
    /** Options are printed on one line if they fit into a terminal of the usual width. */
    private static final int WIDTH = 100;

    /** Keeps a copy. */
    public Posed {
        choices = List.copyOf(choices);
    }

    /**
     * One of several answers.
     *
     * @param key what to type; empty for Enter
     * @param words what it means
     */
    public record Choice(String key, Phrase words) {
        private String line() {
            return (key.isEmpty() ? "Enter" : key) + " = " + words.english();
        }
    }

    /**
     * The answers, as lines of text.
     *
     * @return one line if they fit, or one for each
     */
    List<String> lines() {
        if (choices.isEmpty()) {
            return List.of();
        }
        List<String> lines = choices.stream().map(Choice::line).toList();
        String all = "  " + String.join("; ", lines);
        return all.length() <= WIDTH
                ? List.of(all)
                : lines.stream().map(line -> "  " + line).toList();
    }
}
