package dev.lampwright.tool.survey;

import java.util.List;
import java.util.stream.Collectors;

/** Values as TOML 1.0 writes them. */
final class TomlWriter {
    private TomlWriter() {}

    /** A text as a basic string, with whatever it holds. */
    static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        text.chars().forEach(c -> {
            if (c == '"' || c == '\\') {
                quoted.append('\\').append((char) c);
            } else if (c < ' ' || c == 0x7F) {
                quoted.append(String.format("\\u%04X", c));
            } else {
                quoted.append((char) c);
            }
        });
        return quoted.append('"').toString();
    }

    /** A text with backslashes, as a literal string if it can be one. */
    static String literal(String text) {
        boolean can = text.chars().noneMatch(c -> c == '\'' || c < ' ' || c == 0x7F);
        return can ? '\'' + text + '\'' : quoted(text);
    }

    /** Texts as an array. */
    static String quoted(List<String> texts) {
        return texts.stream().map(TomlWriter::quoted).collect(Collectors.joining(", ", "[", "]"));
    }

    /** A text that a comment may hold: on one line. */
    static String comment(String text) {
        return "# " + text.replaceAll("\\p{Cntrl}", ".");
    }
}
