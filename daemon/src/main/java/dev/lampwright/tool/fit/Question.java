package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A question.
 *
 * @param <T> the type of an answer
 * @param posed as it is put
 * @param reading turns a line into an answer
 * @param trial shows what an answer that is only tried would look like
 */
record Question<T>(Posed posed, Reading<T> reading, Consumer<T> trial) {
    /** An answer that is not valid. The message says what would be. */
    static final class UnusableException extends Exception {
        private static final long serialVersionUID = 1L;

        private final transient Phrase why;

        /**
         * An answer that is not valid.
         *
         * @param code what identifies the reason
         * @param whatWouldBeRight in English
         * @param values names and values in turn
         */
        UnusableException(String code, String whatWouldBeRight, Object... values) {
            super(whatWouldBeRight);
            why = Phrase.of(code, whatWouldBeRight, values);
        }

        /** What would be valid. */
        Phrase why() {
            return why;
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
     * @param code its code for terminals with texts of their own; empty if its words are those of the user
     */
    record Option<T>(String key, String words, T value, String code) {
        Option(String key, String words, T value) {
            this(key, words, value, "");
        }

        /** The same with a code. */
        Option<T> named(String newCode) {
            return new Option<>(key, words, value, newCode);
        }

        private boolean isMeantBy(String line) {
            String typed = line.toLowerCase(Locale.ROOT);
            return typed.equals(key) || typed.equals(words.toLowerCase(Locale.ROOT));
        }

        private Posed.Choice choice() {
            return new Posed.Choice(key, Phrase.of(code, words));
        }
    }

    /** A question that is answered by a line of text. */
    Question(String words, String help, Reading<T> reading) {
        this(new Posed(Phrase.plain(words), List.of(), help, Form.TEXT), reading, answer -> {});
    }

    /** The same with a code, by which terminals with texts of their own find it, and names and values in turn. */
    Question<T> coded(String code, Object... values) {
        Phrase words = Phrase.of(code, posed.words().english(), values);
        return new Question<>(new Posed(words, posed.choices(), posed.help(), posed.form()), reading, trial);
    }

    /** The same with another form of answer. */
    Question<T> in(Form form) {
        return new Question<>(new Posed(posed.words(), posed.choices(), posed.help(), form), reading, trial);
    }

    /** The same for an answer that can be tried before it is given. */
    Question<T> tried(Consumer<T> newTrial) {
        return new Question<>(posed, reading, newTrial);
    }

    /** A question with a choice of answers. */
    static <T> Question<T> choice(String words, String help, List<Option<T>> options) {
        String keys = options.stream()
                .map(option -> option.key.isEmpty() ? "Enter" : option.key)
                .collect(Collectors.joining(", "));
        List<Posed.Choice> choices = options.stream().map(Option::choice).toList();
        return new Question<>(
                new Posed(Phrase.plain(words), choices, help, Form.CHOICE),
                line -> options.stream()
                        .filter(option -> option.isMeantBy(line))
                        .findFirst()
                        .orElseThrow(() -> new UnusableException("one_of", "type one of " + keys, "keys", keys))
                        .value(),
                answer -> {});
    }

    /** A question that is answered by yes or no. */
    static Question<Boolean> yesOrNo(String words, String help) {
        return choice(
                words,
                help,
                List.of(new Option<>("y", "yes", true).named("yes"), new Option<>("n", "no", false).named("no")));
    }

    /** A question that waits for the Enter key. */
    static Question<Boolean> enter(String words, String help) {
        Question<Boolean> question = new Question<>(words, help, line -> {
            if (!line.isEmpty()) {
                throw new UnusableException("enter", "press Enter to continue");
            }
            return true;
        });
        return question.in(Form.ENTER);
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
                    "name_form", "a name begins with a letter and has letters, digits, _ and -, at most 31 in all");
        }
        if (ALWAYS_THERE.contains(line) || taken.contains(line)) {
            throw new UnusableException(
                    "name_taken", line + " is already used for something else; choose another name", "name", line);
        }
        return line;
    }
}
