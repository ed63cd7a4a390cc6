package dev.lampwright.toml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * Reads TOML 1.0. After a mistake it continues with the next line that starts a key or a header, so that all mistakes of a text are
 * reported at once. Time and memory are proportional to the text, and the call depth is bounded.
 */
public final class Toml {
    /**
     * The maximum nesting of tables and arrays, including the outermost table. No configuration needs a fifth of it, and the reader, which
     * recurses for each, fits into small stacks.
     */
    public static final int DEEPEST = 64;

    /** Reading ends after this many mistakes: the text is something else, or one mistake has caused all the others. */
    static final int MOST_MISTAKES = 50;

    private static final Comparator<TomlMistake> IN_ORDER =
            Comparator.comparingInt(TomlMistake::line).thenComparingInt(TomlMistake::column);

    private final TomlSource text;
    private final TomlStrings strings;
    private final TomlScalars scalars;
    private final TomlMarks marks;
    private final TomlTree tree = new TomlTree();
    private final List<TomlMistake> mistakes = new ArrayList<>();
    private Map<String, Object> table = tree.root();

    private Toml(String text, TomlMarks marks) {
        this.text = new TomlSource(text);
        this.marks = marks;
        strings = new TomlStrings(this.text);
        scalars = new TomlScalars(this.text);
    }

    /**
     * Reads a text.
     *
     * @param text any text
     * @return its values, lines and mistakes
     */
    public static TomlDocument read(String text) {
        return read(text, TomlMarks.NONE);
    }

    /** Reads a text, and reports where its parts are. */
    static TomlDocument read(String text, TomlMarks marks) {
        Toml toml = new Toml(text, marks);
        toml.document();
        toml.mistakes.sort(IN_ORDER);
        return new TomlDocument(toml.tree, toml.mistakes);
    }

    private void document() {
        while (text.more()) {
            try {
                line();
            } catch (TooDeepException e) {
                mistakes.add(e.mistake());
                return;
            } catch (GaveUpException e) {
                // The mistake has been recorded, and the text is where reading continues.
            } catch (TomlException e) {
                note(e);
                text.skipLine();
            }
        }
    }

    /** Records a mistake, and ends reading if there are too many. */
    private void note(TomlException e) {
        if (mistakes.size() < MOST_MISTAKES) {
            mistakes.add(e.mistake());
        }
        if (mistakes.size() == MOST_MISTAKES) {
            text.skipAll();
        }
    }

    private void line() throws TomlException {
        text.skipBlanks();
        if (text.peek() == '[') {
            header();
            lineEnd("end the line after the header");
        } else if (text.atLineEnd() || text.peek() == '#') {
            lineEnd("");
        } else {
            pair(table);
            lineEnd("end the line after the value, and write numbers without a unit");
        }
    }

    private void lineEnd(String whatWouldBeRight) throws TomlException {
        text.skipBlanks();
        comment();
        if (!text.atLineEnd()) {
            throw text.mistake("something follows: " + TomlSource.quoted(text.shown()), whatWouldBeRight);
        }
        text.skipLine();
    }

    private void comment() throws TomlException {
        if (text.peek() != '#') {
            return;
        }
        while (!text.atLineEnd()) {
            if (TomlStrings.isControl(text.peek())) {
                throw TomlStrings.control(text);
            }
            text.skip();
        }
    }

    private void header() throws TomlException {
        table = tree.apart();
        TomlSource.Place start = text.place();
        int from = text.at();
        text.skip();
        boolean element = text.skipIf('[');
        List<String> names = key();
        for (int i = 0; i < (element ? 2 : 1); i++) {
            if (!text.skipIf(']')) {
                throw start.mistake(
                        "the header that begins here is not closed", element ? "close it with ]]" : "close it with ]");
            }
        }
        marks.header(names, element, from, text.at());
        try {
            table = element ? tree.element(names, start.line()) : tree.table(names, start.line());
        } catch (TooDeepException e) {
            throw e;
        } catch (TomlException e) {
            note(e);
        }
    }

    /** A key and its value. */
    private void pair(Map<String, Object> within) throws TomlException {
        int line = text.line();
        List<String> names = key();
        if (!text.skipIf('=')) {
            throw text.mistake("there is no = after the key", "write key = value");
        }
        text.skipBlanks();
        String name = names.get(names.size() - 1);
        marks.pair(names);
        Map<String, Object> owner = owner(within, names, line);
        Object value = value(owner, name);
        owner.putIfAbsent(name, value);
    }

    /** The table that a key is in; a detached one if the key is not allowed there. */
    private Map<String, Object> owner(Map<String, Object> within, List<String> names, int line) throws TomlException {
        try {
            Map<String, Object> owner = tree.tableOf(within, names, line);
            tree.note(owner, names.get(names.size() - 1), line);
            return owner;
        } catch (TooDeepException e) {
            throw e;
        } catch (TomlException e) {
            note(e);
            return tree.apart();
        }
    }

    /** Names separated by dots, and the blanks after them. */
    private List<String> key() throws TomlException {
        List<String> names = new ArrayList<>();
        do {
            text.skipBlanks();
            if (names.isEmpty()) {
                marks.keyBegins(text.at());
            }
            names.add(name());
            marks.nameEnds(text.at());
            if (names.size() > DEEPEST) {
                throw TomlTree.tooDeep(text.line());
            }
            text.skipBlanks();
        } while (text.skipIf('.'));
        return names;
    }

    private String name() throws TomlException {
        char c = text.peek();
        if (c == '"' || c == '\'') {
            return strings.ofOneLine();
        }
        int start = text.at();
        while (isBare(text.peek())) {
            text.skip();
        }
        if (text.at() == start) {
            throw text.atLineEnd()
                    ? text.mistake("the line ends where a key should be", "write key = value")
                    : text.mistake(
                            TomlSource.quoted(text.shown()) + " is not a key",
                            "write key = value; a key has letters from A to Z, digits, - and _, or is in \"quotes\"");
        }
        return text.since(start);
    }

    private static boolean isBare(char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
    }

    private Object value(Object around, String name) throws TomlException {
        if (text.atLineEnd() || text.peek() == '#') {
            throw text.mistake("the value is missing", "give it on the same line, before any comment");
        }
        marks.valueBegins(text.at());
        Object value = switch (text.peek()) {
            case '"', '\'' -> strings.any();
            case '[' -> array(tree.literalArray(around, name, text.line()));
            case '{' -> inlineTable(tree.literalTable(around, name, text.line()));
            default -> scalars.any();
        };
        marks.valueEnds(text.at());
        return value;
    }

    private Map<String, Object> inlineTable(Map<String, Object> inline) throws TomlException {
        Bracket brace = new Bracket(text.place());
        text.skip();
        sameLine(brace);
        while (text.peek() != '}') {
            pair(inline);
            sameLine(brace);
            if (text.skipIf(',')) {
                afterComma(brace);
            } else if (text.peek() != '}') {
                throw noComma('}', brace);
            }
        }
        text.skip();
        tree.close(inline);
        return inline;
    }

    private void afterComma(Bracket brace) throws TomlException {
        marks.comma(text.at() - 1);
        text.skipBlanks();
        if (text.peek() == '}') {
            note(text.mistake("a comma is before the }", "remove it"));
        }
        sameLine(brace);
    }

    /** Skips blanks. A line end within braces is a mistake, but what follows is read as if it were not. */
    private void sameLine(Bracket brace) throws TomlException {
        text.skipBlanks();
        if (text.atLineEnd() || text.peek() == '#') {
            brace.noteOnce("the { that opens here is not closed on its line", "close it with } on the same line");
            skipBlanksAndLines();
            if (!text.more() || text.beginsHeader()) {
                throw new GaveUpException();
            }
        }
    }

    private TomlException noComma(char close, Bracket bracket) {
        return bracket.noted && text.beginsKey()
                ? new GaveUpException()
                : text.mistake(
                        TomlSource.quoted(text.shown()) + " is where a comma or a " + close + " should be",
                        "put commas between, and " + close + " at the end");
    }

    private List<Object> array(List<Object> array) throws TomlException {
        Bracket bracket = new Bracket(text.place());
        text.skip();
        while (true) {
            try {
                linesWithin(bracket);
                if (text.skipIf(']')) {
                    return array;
                }
                element(array, bracket);
            } catch (TooDeepException e) {
                throw e;
            } catch (TomlException e) {
                goOnAfter(e, bracket);
            }
        }
    }

    private void element(List<Object> array, Bracket bracket) throws TomlException {
        tree.noteElement(array, text.line());
        array.add(value(array, Integer.toString(array.size())));
        linesWithin(bracket);
        if (text.skipIf(',')) {
            marks.comma(text.at() - 1);
        } else if (text.peek() != ']') {
            throw noComma(']', bracket);
        }
    }

    /** Skips blanks, comments and ends of lines, unless the next line cannot be in an array. */
    private void linesWithin(Bracket bracket) throws TomlException {
        int line = text.line();
        skipBlanksAndLines();
        if (!text.more() || (text.line() > line && (text.beginsKey() || text.beginsHeader()))) {
            bracket.noteOnce("the [ that opens here is not closed", "close it with ]");
            throw new GaveUpException();
        }
    }

    /** After a mistake in an array: continues with its next line, unless that cannot be in an array. */
    private void goOnAfter(TomlException e, Bracket bracket) throws TomlException {
        if (!(e instanceof GaveUpException)) {
            note(e);
            text.skipLine();
        }
        bracket.noted = true;
        while (text.more() && (text.atLineEnd() || text.peek() == '#')) {
            text.skipLine();
            text.skipBlanks();
        }
        if (!text.more() || text.beginsKey() || text.beginsHeader()) {
            throw new GaveUpException();
        }
    }

    private void skipBlanksAndLines() throws TomlException {
        text.skipBlanks();
        while (text.more() && (text.atLineEnd() || text.peek() == '#')) {
            comment();
            text.skipLine();
            text.skipBlanks();
        }
    }

    /** An opening bracket or brace, reported once if it is not closed. */
    private final class Bracket {
        private final TomlSource.Place place;
        private boolean noted;

        Bracket(TomlSource.Place place) {
            this.place = place;
        }

        void noteOnce(String what, String whatWouldBeRight) {
            if (!noted) {
                note(place.mistake(what, whatWouldBeRight));
            }
            noted = true;
        }
    }
}
