package dev.lampwright.toml;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Inserts single parts into a text and leaves the rest unchanged. */
final class TomlInserts {
    private static final String INDENT = "  ";

    private final String text;
    private final TomlLines lines;
    private final TomlCuts cuts;
    private final String newline;

    TomlInserts(String text, String newline) {
        this.text = text;
        this.newline = newline;
        lines = new TomlLines(text);
        cuts = new TomlCuts(text);
    }

    private String with(int at, String inserted) {
        return text.substring(0, at) + inserted + text.substring(at);
    }

    /** Inserts a line; the previous line gets a line end if it has none. */
    private String withLine(int at, String line) {
        boolean open = at > 0 && text.charAt(at - 1) != '\n';
        return with(at, (open ? newline : "") + line + newline);
    }

    /** A new text for a value. A comment after it stays in its column if there is room. */
    String replace(TomlPart value, String next) {
        int blanks = value.to;
        while (blanks < text.length() && text.charAt(blanks) == ' ') {
            blanks++;
        }
        String rest = text.substring(value.to);
        if (blanks - value.to > 1 && text.startsWith("#", blanks)) {
            int room = blanks - value.to + (value.to - value.from) - next.length();
            rest = " ".repeat(Math.max(1, room)) + text.substring(blanks);
        }
        return text.substring(0, value.from) + next + rest;
    }

    /** A pair at the end of braces. */
    String pairInBraces(TomlPart braces, String pair) {
        return braces.pairs.isEmpty()
                ? text.substring(0, braces.from) + "{ " + pair + " }" + text.substring(braces.to)
                : with(braces.pairs.get(braces.pairs.size() - 1).to, ", " + pair);
    }

    /** A pair after another whose key begins with the same names. */
    String pairBehind(TomlPart pair, int names, String rest) {
        int prefix = pair.key.nameEnds().get(names - 1);
        String next = text.substring(pair.key.from(), prefix) + "." + rest;
        return pair.container().kind == TomlPart.Kind.BRACES
                ? with(pair.to, ", " + next)
                : withLine(lines.after(pair.to), lines.indent(pair.key.from()) + next);
    }

    /**
     * A pair at the end of a section.
     *
     * @param firstHeader the first header of the text, for the outermost table without keys; null if there is none
     */
    String pairInSection(TomlPart section, String pair, TomlPart firstHeader) {
        if (section.around == null && section.pairs.isEmpty()) {
            int at = firstHeader == null ? text.length() : lines.commentsAbove(lines.begin(firstHeader.from));
            return withLine(at, pair + (firstHeader == null ? "" : newline));
        }
        int like = section.pairs.isEmpty()
                ? section.from
                : section.pairs.get(section.pairs.size() - 1).key.from();
        return withLine(cuts.lastLine(section), lines.indent(like) + pair);
    }

    /**
     * A section after another, or at the end of the text if that is null; with an empty line before it, and after it if anything follows.
     */
    String sectionBehind(TomlPart before, String header, Map<?, ?> pairs) {
        return sectionBehind(before, section(header, pairs));
    }

    /** The same with the lines of a section unchanged. */
    String sectionBehind(TomlPart before, String section) {
        int at = before == null ? text.length() : cuts.endOf(before);
        boolean first = at == 0 || lines.blankLine(lines.begin(at - 1));
        boolean last = at == text.length() || lines.blankLine(at);
        return withLine(at, (first ? "" : newline) + section + (last ? "" : newline));
    }

    /** A section above another and the comments directly above that. */
    String sectionAbove(TomlPart after, String header, Map<?, ?> pairs) {
        return withLine(lines.commentsAbove(lines.begin(after.from)), section(header, pairs) + newline);
    }

    private String section(String header, Map<?, ?> pairs) {
        String body = pairs.entrySet().stream()
                .map(entry -> newline + TomlText.pair(List.of(entry.getKey().toString()), entry.getValue(), newline))
                .collect(Collectors.joining());
        return header + body;
    }

    /** An element of an array in brackets. */
    String element(TomlPart array, int index, String value) {
        List<TomlPart> elements = array.elements;
        if (elements.isEmpty()) {
            return first(array, value);
        }
        if (index < elements.size()) {
            TomlPart next = elements.get(index);
            int begin = lines.begin(next.from);
            return lines.blank(begin, next.from)
                    ? with(begin, lines.indent(next.from) + value + "," + newline)
                    : with(next.from, value + ", ");
        }
        return last(elements.get(elements.size() - 1), value, array);
    }

    private String first(TomlPart array, String value) {
        boolean severalLines = text.substring(array.from, array.to).indexOf('\n') >= 0;
        int close = array.to - 1;
        return severalLines
                ? with(lines.begin(close), lines.indent(array.from) + INDENT + value + "," + newline)
                : text.substring(0, array.from) + "[" + value + "]" + text.substring(array.to);
    }

    private String last(TomlPart before, String value, TomlPart array) {
        int end = before.comma < 0 ? before.to : before.comma + 1;
        boolean ownLine = lines.blank(lines.begin(before.from), before.from)
                && lines.endsAfter(end)
                && lines.after(end) < array.to;
        if (!ownLine) {
            return before.comma < 0 ? with(end, ", " + value) : with(end, " " + value);
        }
        int at = lines.after(end);
        return text.substring(0, end)
                + (before.comma < 0 ? "," : "")
                + text.substring(end, at)
                + lines.indent(before.from)
                + value
                + (before.comma < 0 ? "" : ",")
                + newline
                + text.substring(at);
    }

    /** Comment lines directly above a line. */
    String comments(int begin, List<String> comments) {
        String indent = lines.indent(begin);
        return with(
                begin,
                comments.stream()
                        .map(comment -> indent + TomlText.comment(comment) + newline)
                        .collect(Collectors.joining()));
    }
}
