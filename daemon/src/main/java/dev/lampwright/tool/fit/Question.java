package dev.lampwright.tool.fit;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A question.
 *
 * @param <T> the type of an answer
 * @param words the question
 * @param options the possible answers, one line each; may be empty
 * @param help what to say if the user does not know how to answer
 * @param reading turns a line into an answer
 */
record Question<T>(String words, List<String> options, String help, Reading<T> reading) {
    /** Options are printed on one line if they fit into a terminal of the usual width. */
    private static final int WIDTH = 100;

    /** An answer that is not valid. The message says what would be. */
    static final class UnusableException extends Exception {
        private static final long serialVersionUID = 1L;

        UnusableException(String whatWouldBeRight) {
            super(whatWouldBeRight);
        }
    }

    private static final Pattern NAME = Pattern.compile("[A-Za-z][A-Za-z0-9_-]{0,30}");
    private static final List<String> ALWAYS_THERE = List.of("strip", "plain");

    /** Turns a line into an answer. */
    interface Reading<T> {
        /**
         * Reads a line.
         *
         * @param line without blanks around it; empty for Enter alone
         * @return the answer
         * @throws UnusableException if it is not valid
         */
        T of(String line) throws UnusableException;
    }

    /**
     * One of several answers.
     *
     * @param key what to type
     * @param words what it means; may be typed as well
     * @param value the answer
     */
    record Option<T>(String key, String words, T value) {
        private boolean isMeantBy(String line) {
            String typed = line.toLowerCase(Locale.ROOT);
            return typed.equals(key) || typed.equals(words.toLowerCase(Locale.ROOT));
        }

        private String line() {
            return (key.isEmpty() ? "Enter" : key) + " = " + words;
        }
    }

    /** A question with a choice of answers. */
    static <T> Question<T> choice(String words, String help, List<Option<T>> options) {
        String keys = options.stream()
                .map(option -> option.key.isEmpty() ? "Enter" : option.key)
                .collect(Collectors.joining(", "));
        List<String> lines = options.stream().map(Option::line).toList();
        String all = "  " + String.join("; ", lines);
        return new Question<>(
                words,
                all.length() <= WIDTH
                        ? List.of(all)
                        : lines.stream().map(line -> "  " + line).toList(),
                help,
                line -> options.stream()
                        .filter(option -> option.isMeantBy(line))
                        .findFirst()
                        .orElseThrow(() -> new UnusableException("type one of " + keys))
                        .value());
    }

    /** A question that is answered by yes or no. */
    static Question<Boolean> yesOrNo(String words, String help) {
        return choice(words, help, List.of(new Option<>("y", "yes", true), new Option<>("n", "no", false)));
    }

    /** A question that waits for the Enter key. */
    static Question<Boolean> enter(String words, String help) {
        return new Question<>(words, List.of(), help, line -> {
            if (!line.isEmpty()) {
                throw new UnusableException("press Enter to continue");
            }
            return true;
        });
    }

    /**
     * Reads the name of a zone or a light, as the configuration accepts it.
     *
     * @param line what was typed
     * @param taken names that are already in use
     * @return the name
     * @throws UnusableException if it is not valid, or taken
     */
    static String readName(String line, Collection<String> taken) throws UnusableException {
        if (!NAME.matcher(line).matches()) {
            throw new UnusableException(
                    "a name begins with a letter and has letters, digits, _ and -, at most 31 in all");
        }
        if (ALWAYS_THERE.contains(line) || taken.contains(line)) {
            throw new UnusableException(line + " is already used for something else; choose another name");
        }
        return line;
    }
}
