package dev.lampwright.tool.plan;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines. */
final class LineBreaker {
    private LineBreaker() {}

    /**
     * A text broken into lines.
     *
     * @param text the text; leading blanks stay
     * @param width maximum characters per line, unless a single word is longer
     * @param indent blanks before every line but the first
     * @return the lines, at least one
     */
    static List<String> wrapped(String text, int width, int indent) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (rest.length() > width) {
            int head = rest.length() - rest.stripLeading().length();
            int cut = rest.lastIndexOf(' ', width);
            cut = cut <= Math.max(head, indent) ? rest.indexOf(' ', width) : cut;
            if (cut < 0) {
                break;
            }
            lines.add(rest.substring(0, cut));
            rest = " ".repeat(indent) + rest.substring(cut + 1);
        }
        lines.add(rest);
        return lines;
    }
}
