package dev.lampwright.toml;

/** The lines of a text: where one begins and ends, and what is on it. Places are in characters from the beginning. */
final class TomlLines {
    private final String text;

    TomlLines(String text) {
        this.text = text;
    }

    /** The line end of a text: that of its first line, or LF if it has only one line. */
    static String end(String text) {
        int at = text.indexOf('\n');
        return at > 0 && text.charAt(at - 1) == '\r' ? "\r\n" : "\n";
    }

    /** The beginning of the line that contains a place. */
    int begin(int at) {
        return text.lastIndexOf('\n', at - 1) + 1;
    }

    /** After the line that contains a place, including its line end. */
    int after(int at) {
        int end = text.indexOf('\n', at);
        return end < 0 ? text.length() : end + 1;
    }

    /** The blanks at the beginning of the line that contains a place. */
    String indent(int at) {
        int from = begin(at);
        int to = from;
        while (to < text.length() && isBlank(text.charAt(to))) {
            to++;
        }
        return text.substring(from, to);
    }

    /** Whether there are only blanks between two places. */
    boolean blank(int from, int to) {
        return text.substring(from, to).isBlank();
    }

    /** Whether the line that starts here is empty; false at the end of the text. */
    boolean blankLine(int begin) {
        return begin < text.length() && blank(begin, after(begin));
    }

    /** Whether the line that starts here is only a comment. */
    boolean commentLine(int begin) {
        return begin < text.length()
                && text.substring(begin, after(begin)).strip().startsWith("#");
    }

    /** Whether there is nothing or a comment between a place and the end of its line. */
    boolean endsAfter(int at) {
        String rest = text.substring(at, after(at)).strip();
        return rest.isEmpty() || rest.startsWith("#");
    }

    /** The beginning of the comment lines directly above a line. */
    int commentsAbove(int begin) {
        int from = begin;
        while (from > 0 && commentLine(begin(from - 1))) {
            from = begin(from - 1);
        }
        return from;
    }

    /**
     * After the comment lines from here on, if an empty line or the end of the text follows them; otherwise here, because they belong to
     * what follows.
     */
    int afterComments(int begin) {
        int to = begin;
        while (commentLine(to)) {
            to = after(to);
        }
        return to == text.length() || blankLine(to) ? to : begin;
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t';
    }
}
