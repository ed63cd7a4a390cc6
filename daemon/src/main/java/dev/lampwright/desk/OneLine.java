package dev.lampwright.desk;

/** Text that somebody else wrote, made fit for a line. */
final class OneLine {
    private static final int LONGEST = 300;

    private OneLine() {}

    /** The text in one line, cut if it is long. */
    static String of(String text) {
        StringBuilder line = new StringBuilder();
        text.codePoints().limit(LONGEST).forEach(c -> line.appendCodePoint(fits(c) ? c : '?'));
        return line.toString();
    }

    private static boolean fits(int c) {
        int type = Character.getType(c);
        return !Character.isISOControl(c)
                && type != Character.LINE_SEPARATOR
                && type != Character.PARAGRAPH_SEPARATOR
                && type != Character.FORMAT
                && type != Character.SURROGATE;
    }
}
