package dev.lampwright.toml;

import java.util.List;
import java.util.regex.Pattern;

/** A text that is read character by character, with the current position. */
final class TomlSource {
    private static final char END = '\0';
    private static final int MOST_QUOTED = 60;
    private static final int MOST_SHOWN = 20;
    private static final String ENDS_A_WORD = " \t\r\n,]}#=\"'";

    private static final int LONGEST_BEGINNING = 200;
    private static final Pattern KEY = Pattern.compile("[A-Za-z0-9_-][A-Za-z0-9_ \\t.-]*=");
    private static final Pattern HEADER =
            Pattern.compile("\\[\\[?[ \\t]*(?!true|false|inf|nan)[A-Za-z_][A-Za-z0-9_ \\t.-]*\\]");

    private final String text;
    private int at;
    private int line = 1;
    private int lineStart;

    TomlSource(String text) {
        this.text = text;
    }

    boolean more() {
        return at < text.length();
    }

    /** The next character; NUL at the end; {@link #more} distinguishes the two. */
    char peek() {
        return peek(0);
    }

    char peek(int ahead) {
        return at + ahead < text.length() ? text.charAt(at + ahead) : END;
    }

    boolean startsWith(String prefix) {
        return text.startsWith(prefix, at);
    }

    void skip() {
        if (peek() == '\n') {
            line++;
            lineStart = at + 1;
        }
        at++;
    }

    void skip(int count) {
        for (int i = 0; i < count; i++) {
            skip();
        }
    }

    /** Skips a character if it comes next. */
    boolean skipIf(char c) {
        if (!more() || peek() != c) {
            return false;
        }
        skip();
        return true;
    }

    /** Spaces and tabs. */
    void skipBlanks() {
        while (peek() == ' ' || peek() == '\t') {
            skip();
        }
    }

    void skipLine() {
        while (more() && peek() != '\n') {
            skip();
        }
        skip();
    }

    void skipAll() {
        at = text.length();
    }

    /** Whether a line ends here: LF, CR LF, or the end of the text. */
    boolean atLineEnd() {
        return !more() || peek() == '\n' || (peek() == '\r' && peek(1) == '\n');
    }

    /** The characters up to the next one that ends a word, possibly none; continues after them. */
    String word() {
        int start = at;
        while (more() && ENDS_A_WORD.indexOf(peek()) < 0) {
            skip();
        }
        return text.substring(start, at);
    }

    /** A part of the text already read. */
    String since(int start) {
        return text.substring(start, at);
    }

    /** The beginning of the rest of this line, without surrounding blanks, for display; does not advance. */
    String shown() {
        int from = Math.min(text.length(), at);
        int to = Math.min(text.length(), from + MOST_SHOWN);
        int end = text.indexOf('\n', from);
        return text.substring(from, end < 0 ? to : Math.min(end, to)).strip();
    }

    /** Whether an unquoted key and its = come next. */
    boolean beginsKey() {
        return matches(KEY);
    }

    /** Whether a header comes next rather than an array: its first name is not a value. */
    boolean beginsHeader() {
        return matches(HEADER);
    }

    private boolean matches(Pattern pattern) {
        int end = Math.min(text.length(), at + LONGEST_BEGINNING);
        return at < end && pattern.matcher(text).region(at, end).lookingAt();
    }

    int at() {
        return at;
    }

    int line() {
        return line;
    }

    int column() {
        return at - lineStart + 1;
    }

    /** The current position, for a later message. */
    Place place() {
        return new Place(line, column());
    }

    /** A mistake at the next character. */
    TomlException mistake(String what, String whatWouldBeRight) {
        return place().mistake(what, whatWouldBeRight);
    }

    /** A text in quotes, shortened if long. */
    static String quoted(String text) {
        return '"' + (text.length() <= MOST_QUOTED ? text : text.substring(0, MOST_QUOTED) + "...") + '"';
    }

    /**
     * A place in the text.
     *
     * @param line from 1
     * @param column from 1
     */
    record Place(int line, int column) {
        TomlException mistake(String what, String whatWouldBeRight) {
            return new TomlException(new TomlMistake(line, column, List.of(), what, whatWouldBeRight));
        }
    }
}
