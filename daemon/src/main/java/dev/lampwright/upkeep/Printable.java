package dev.lampwright.upkeep;

/** Makes text from outside fit for a log or a terminal: one line, short, without control characters. */
public final class Printable {
    private Printable() {}

    /**
     * The first characters of a text.
     *
     * @param text any text
     * @param most how many characters to keep, at most
     * @return those characters, with each unprintable one replaced by a dot
     */
    public static String beginning(String text, int most) {
        StringBuilder shown = new StringBuilder(most);
        text.codePoints().limit(most).map(Printable::shown).forEach(shown::appendCodePoint);
        if (shown.length() > most) {
            shown.setLength(Character.isHighSurrogate(shown.charAt(most - 1)) ? most - 1 : most);
        }
        return shown.toString();
    }

    private static int shown(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> '.';
            default -> character;
        };
    }
}
