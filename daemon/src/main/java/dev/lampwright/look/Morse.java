package dev.lampwright.look;

/** The letters of the international Morse code. Source: Recommendation ITU-R M.1677-1, section 1.1.1. */
final class Morse {
    private static final String[] LETTERS = {
        ".-", "-...", "-.-.", "-..", ".", "..-.", "--.", "....", "..", ".---", "-.-", ".-..", "--",
        "-.", "---", ".--.", "--.-", ".-.", "...", "-", "..-", "...-", ".--", "-..-", "-.--", "--.."
    };

    private Morse() {}

    /**
     * The signs of one letter.
     *
     * @param letter one of A to Z
     * @return dots and dashes; empty if it is not one letter
     */
    static String signs(String letter) {
        boolean known = letter.length() == 1 && letter.charAt(0) >= 'A' && letter.charAt(0) <= 'Z';
        return known ? LETTERS[letter.charAt(0) - 'A'] : "";
    }
}
