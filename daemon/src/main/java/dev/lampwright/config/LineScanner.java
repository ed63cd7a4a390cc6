package dev.lampwright.config;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Goes once through a TOML 1.0 text and notes where each key stands. It checks nothing: the text has been through a parser, or
 * will be refused by one. Whatever the text, it comes to an end and does not throw.
 */
final class LineScanner {
    private static final char END = '\0';
    /** The parser refuses what stands deeper. */
    private static final int LONGEST_PATH = Toml.DEEPEST;

    private final String text;
    private final Map<List<String>, Integer> lines = new HashMap<>();
    private final Map<List<String>, Integer> elements = new HashMap<>();
    private Optional<LineIndex.Repeat> repeat = Optional.empty();
    private int at;
    private int line = 1;
    private int tooDeepLine;

    LineScanner(String text) {
        this.text = text;
    }

    Map<List<String>, Integer> lines() {
        return lines;
    }

    Optional<LineIndex.Repeat> repeat() {
        return repeat;
    }

    int tooDeepLine() {
        return tooDeepLine;
    }

    void scan() {
        List<String> table = List.of();
        skipBlanksAndLines();
        while (more()) {
            int before = at;
            if (peek() == '[') {
                table = header();
            } else {
                keyAndValue(table);
            }
            skipBlanksAndLines();
            goOnFrom(before);
        }
    }

    private List<String> header() {
        int headerLine = line;
        skip();
        boolean element = peek() == '[';
        if (element) {
            skip();
        }
        List<String> path = resolved(key(), element);
        noteIfNoMoreFits(path);
        lines.put(path, headerLine);
        while (peek() == ']') {
            skip();
        }
        return path;
    }

    /** The path of a header: names of arrays of tables are followed by the index of their last element, or of a new one. */
    private List<String> resolved(List<String> names, boolean newElement) {
        List<String> path = List.of();
        for (int i = 0; i < names.size(); i++) {
            path = within(path, names.get(i));
            note(path, line);
            if (newElement && i == names.size() - 1) {
                elements.merge(path, 1, Integer::sum);
            }
            Integer count = elements.get(path);
            if (count != null) {
                path = within(path, Integer.toString(count - 1));
            }
        }
        return path;
    }

    private void keyAndValue(List<String> table) {
        int keyLine = line;
        List<String> path = table;
        for (String name : key()) {
            if (!path.isEmpty()) {
                note(path, keyLine);
            }
            path = within(path, name);
        }
        noteRepeat(path, keyLine);
        note(path, keyLine);
        if (peek() == '=') {
            skip();
            skipBlanks();
            value(path);
        }
    }

    /** A path with one more name. One that is too long already stays as it is, and is not noted. */
    private List<String> within(List<String> path, String name) {
        if (path.size() > LONGEST_PATH) {
            return path;
        }
        noteIfNoMoreFits(path);
        List<String> inner = new ArrayList<>(path);
        inner.add(name);
        return List.copyOf(inner);
    }

    /** To be called where a path stands for a table or an array. */
    private void noteIfNoMoreFits(List<String> path) {
        if (path.size() >= LONGEST_PATH && tooDeepLine == 0) {
            tooDeepLine = line;
        }
    }

    private void note(List<String> path, int keyLine) {
        if (path.size() <= LONGEST_PATH) {
            lines.putIfAbsent(path, keyLine);
        }
    }

    private void noteRepeat(List<String> path, int keyLine) {
        Integer earlier = lines.get(path);
        if (earlier != null && repeat.isEmpty()) {
            repeat = Optional.of(new LineIndex.Repeat(path, earlier, keyLine));
        }
    }

    private List<String> key() {
        List<String> names = new ArrayList<>();
        do {
            if (!names.isEmpty()) {
                skip();
            }
            skipBlanks();
            names.add(name());
            skipBlanks();
        } while (peek() == '.');
        return names;
    }

    private String name() {
        if (peek() == '"' || peek() == '\'') {
            return quoted();
        }
        int start = at;
        while (more() && isBare(peek())) {
            skip();
        }
        return text.substring(start, at);
    }

    private static boolean isBare(char c) {
        return c > ' ' && "=.[]{},#\"'".indexOf(c) < 0;
    }

    private void value(List<String> path) {
        switch (peek()) {
            case '"', '\'' -> string();
            case '[' -> nested(path, ']');
            case '{' -> nested(path, '}');
            default -> scalar();
        }
    }

    private void scalar() {
        while (more() && ",]}#\n".indexOf(peek()) < 0) {
            skip();
        }
    }

    private void nested(List<String> path, char close) {
        skip();
        noteIfNoMoreFits(path);
        if (path.size() >= LONGEST_PATH) {
            return;
        }
        skipBlanksAndLines();
        for (int index = 0; more() && peek() != close; index++) {
            int before = at;
            if (close == '}') {
                keyAndValue(path);
            } else {
                element(path, index);
            }
            skipBlanksAndLines();
            if (peek() == ',') {
                skip();
                skipBlanksAndLines();
            }
            goOnFrom(before);
        }
        skip();
    }

    private void element(List<String> array, int index) {
        List<String> path = within(array, Integer.toString(index));
        note(path, line);
        value(path);
    }

    private void string() {
        String quote = text.substring(at, at + 1);
        if (text.startsWith(quote.repeat(3), at)) {
            longString(quote);
        } else {
            quoted();
        }
    }

    /** A string in three quotes; up to two more quotes before the last three belong to it. */
    private void longString(String quote) {
        String close = quote.repeat(3);
        skip(3);
        while (more() && !text.startsWith(close, at)) {
            skip(isEscape(quote.charAt(0)) ? 2 : 1);
        }
        skip(3);
        for (int extra = 0; extra < 2 && peek() == quote.charAt(0); extra++) {
            skip();
        }
    }

    /** A string in single or double quotes. */
    private String quoted() {
        char quote = peek();
        skip();
        StringBuilder content = new StringBuilder();
        while (more() && peek() != quote) {
            if (isEscape(quote)) {
                skip();
                escaped(content);
            } else {
                content.append(peek());
                skip();
            }
        }
        skip();
        return content.toString();
    }

    private boolean isEscape(char quote) {
        return quote == '"' && peek() == '\\';
    }

    private void escaped(StringBuilder content) {
        char c = peek();
        skip();
        switch (c) {
            case 'b' -> content.append('\b');
            case 't' -> content.append('\t');
            case 'n' -> content.append('\n');
            case 'f' -> content.append('\f');
            case 'r' -> content.append('\r');
            case 'u' -> codePoint(content, 4);
            case 'U' -> codePoint(content, 8);
            default -> content.append(c);
        }
    }

    private void codePoint(StringBuilder content, int digits) {
        int value = 0;
        for (int i = 0; i < digits && Character.digit(peek(), 16) >= 0; i++) {
            value = value << 4 | Character.digit(peek(), 16);
            skip();
        }
        if (Character.isValidCodePoint(value)) {
            content.appendCodePoint(value);
        }
    }

    private void skipBlanksAndLines() {
        skipBlanks();
        while (peek() == '\n' || peek() == '\r' || peek() == '#') {
            if (peek() == '#') {
                skipComment();
            } else {
                skip();
            }
            skipBlanks();
        }
    }

    private void skipComment() {
        while (more() && peek() != '\n') {
            skip();
        }
    }

    private void skipBlanks() {
        while (peek() == ' ' || peek() == '\t') {
            skip();
        }
    }

    /** Steps over a character that is no TOML, if nothing has moved. */
    private void goOnFrom(int before) {
        if (at == before) {
            skip();
        }
    }

    private boolean more() {
        return at < text.length();
    }

    private char peek() {
        return more() ? text.charAt(at) : END;
    }

    private void skip(int count) {
        for (int i = 0; i < count; i++) {
            skip();
        }
    }

    private void skip() {
        if (more()) {
            if (text.charAt(at) == '\n') {
                line++;
            }
            at++;
        }
    }
}
