package dev.lampwright.toml;

import java.util.List;

/** Removes single parts from a text. The rest stays the same, except for a surplus empty line. */
final class TomlCuts {
    private final String text;
    private final TomlLines lines;

    TomlCuts(String text) {
        this.text = text;
        lines = new TomlLines(text);
    }

    private String without(int from, int to) {
        return text.substring(0, from) + text.substring(to);
    }

    /** The text without a value and its key. */
    String pair(TomlPart pair) {
        TomlPart container = pair.container();
        return container.kind == TomlPart.Kind.BRACES
                ? pairInBraces(pair, container)
                : without(lines.begin(pair.key.from()), lines.after(pair.to));
    }

    private String pairInBraces(TomlPart pair, TomlPart braces) {
        List<TomlPart> pairs = braces.pairs;
        int at = pairs.indexOf(pair);
        if (pairs.size() == 1) {
            return without(braces.from + 1, braces.to - 1);
        }
        return at == pairs.size() - 1
                ? without(pairs.get(at - 1).to, pair.to)
                : without(pair.key.from(), pairs.get(at + 1).key.from());
    }

    /** The text without an element of an array in brackets. Its comments stay, except one after an element that has its own lines. */
    String element(TomlPart element) {
        int end = element.comma < 0 ? element.to : element.comma + 1;
        if (hasLinesOfItsOwn(element, end)) {
            return without(lines.begin(element.from), lines.after(end));
        }
        List<TomlPart> elements = element.around.elements;
        int at = elements.indexOf(element);
        if (element.comma < 0) {
            int before = at == 0 ? element.from : elements.get(at - 1).comma;
            return before < element.from && !lines.blank(before + 1, element.from)
                    ? without(element.from, element.to)
                    : without(before, element.to);
        }
        if (!lines.blank(element.to, element.comma)) {
            return text.substring(0, element.from)
                    + text.substring(element.to, element.comma)
                    + text.substring(element.comma + 1);
        }
        int to = end;
        while (to < text.length() && text.charAt(to) == ' ') {
            to++;
        }
        return without(element.from, to);
    }

    private boolean hasLinesOfItsOwn(TomlPart element, int end) {
        return lines.blank(lines.begin(element.from), element.from)
                && lines.blank(element.to, Math.max(element.to, end - 1))
                && text.indexOf('\n', element.to) >= end
                && lines.endsAfter(end);
    }

    /** The text without a header and what is below it, up to the first empty line after its last key. */
    String section(TomlPart section) {
        int from = lines.begin(section.from);
        int to = endOf(section);
        boolean atEnd = to == text.length();
        if ((from == 0 || lines.blankLine(lines.begin(from - 1))) && lines.blankLine(to)) {
            to = lines.after(to);
        } else if (atEnd && from > 0 && lines.blankLine(lines.begin(from - 1))) {
            from = lines.begin(from - 1);
        }
        return without(from, to);
    }

    /** After the last line of a section: its last key's, or a comment's directly below that, if that does not belong to what follows. */
    int endOf(TomlPart section) {
        return lines.afterComments(lastLine(section));
    }

    /** After the line of the last key of a section, or of its header; 0 for the outermost table without keys. */
    int lastLine(TomlPart section) {
        if (!section.pairs.isEmpty()) {
            return lines.after(section.pairs.get(section.pairs.size() - 1).to);
        }
        return section.around == null ? 0 : lines.after(section.to);
    }
}
