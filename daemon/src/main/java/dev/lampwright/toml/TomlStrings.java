package dev.lampwright.toml;

import dev.lampwright.toml.TomlSource.Place;

/** Reads the four kinds of strings. */
final class TomlStrings {
    private static final String CLOSE = "close it on the same line";

    private final TomlSource text;

    TomlStrings(TomlSource text) {
        this.text = text;
    }

    /** A string of any kind, which starts at the next character. */
    String any() throws TomlException {
        return text.startsWith("\"\"\"") || text.startsWith("'''") ? ofSeveralLines() : ofOneLine();
    }

    /** A string in single or double quotes, which starts at the next character. */
    String ofOneLine() throws TomlException {
        Place start = text.place();
        char quote = text.peek();
        text.skip();
        StringBuilder content = new StringBuilder();
        while (text.peek() != quote || !text.more()) {
            if (text.atLineEnd()) {
                throw start.mistake("the quote that opens here is not closed", CLOSE);
            }
            character(content, quote == '"');
        }
        text.skip();
        return content.toString();
    }

    /** A string in three quotes; up to two more quotes before the last three belong to it. */
    private String ofSeveralLines() throws TomlException {
        Place start = text.place();
        char quote = text.peek();
        String close = String.valueOf(quote).repeat(3);
        text.skip(3);
        skipNewline();
        StringBuilder content = new StringBuilder();
        while (!text.startsWith(close)) {
            if (!text.more()) {
                throw start.mistake(
                        "the " + close + " that opens here is not closed", "close it with another " + close);
            }
            if (quote == '"' && linesEndIsHidden()) {
                skipBlanksAndLines();
            } else if (!newline(content)) {
                character(content, quote == '"');
            }
        }
        text.skip(3);
        for (int extra = 0; extra < 2 && text.skipIf(quote); extra++) {
            content.append(quote);
        }
        return content.toString();
    }

    /** Skips a backslash if nothing follows it on its line. */
    private boolean linesEndIsHidden() {
        if (text.peek() != '\\') {
            return false;
        }
        int ahead = 1;
        while (text.peek(ahead) == ' ' || text.peek(ahead) == '\t') {
            ahead++;
        }
        if (text.peek(ahead) != '\n' && (text.peek(ahead) != '\r' || text.peek(ahead + 1) != '\n')) {
            return false;
        }
        text.skip();
        return true;
    }

    private void skipBlanksAndLines() {
        text.skipBlanks();
        while (skipNewline()) {
            text.skipBlanks();
        }
    }

    private boolean skipNewline() {
        if (!text.more() || !text.atLineEnd()) {
            return false;
        }
        text.skipIf('\r');
        text.skip();
        return true;
    }

    private boolean newline(StringBuilder content) {
        int start = text.at();
        if (!skipNewline()) {
            return false;
        }
        content.append(text.since(start));
        return true;
    }

    private void character(StringBuilder content, boolean escapes) throws TomlException {
        char c = text.peek();
        if (escapes && c == '\\') {
            escaped(content);
        } else if (isControl(c)) {
            throw control(text);
        } else {
            content.append(c);
            text.skip();
        }
    }

    static boolean isControl(char c) {
        return (c < ' ' && c != '\t') || c == '\u007f';
    }

    static TomlException control(TomlSource text) {
        return text.mistake(
                String.format("has the control character U+%04X", (int) text.peek()),
                "remove it, or write it as an escape in \"quotes\"");
    }

    private void escaped(StringBuilder content) throws TomlException {
        Place start = text.place();
        text.skip();
        char c = text.peek();
        int simple = "btnfr\"\\".indexOf(c);
        if (simple >= 0) {
            content.append("\b\t\n\f\r\"\\".charAt(simple));
            text.skip();
        } else if (c == 'u' || c == 'U') {
            text.skip();
            codePoint(content, start, c == 'u' ? 4 : 8);
        } else {
            throw start.mistake(
                    "a \\ is before a character that it does not go with",
                    "write \\\\ for \\, or put the text in 'single quotes'");
        }
    }

    private void codePoint(StringBuilder content, Place start, int digits) throws TomlException {
        long value = 0;
        for (int i = 0; i < digits; i++) {
            int digit = text.peek() < '\u0080' ? Character.digit(text.peek(), 16) : -1;
            if (digit < 0) {
                throw start.mistake(
                        "the escape has fewer than " + digits + " hexadecimal digits", "write for instance \\u00B0");
            }
            value = value << 4 | digit;
            text.skip();
        }
        if (value > Character.MAX_CODE_POINT
                || (value >= Character.MIN_SURROGATE && value <= Character.MAX_SURROGATE)) {
            throw start.mistake("the escape is not a character of Unicode", "write for instance \\u00B0");
        }
        content.appendCodePoint((int) value);
    }
}
