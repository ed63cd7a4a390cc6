package dev.lampwright.payload;

/**
 * A word in which {@code *} stands for any characters, or none; case does not count. Matching takes at most as many steps as pattern and
 * word have characters multiplied, and calls nothing again and again, so no pattern and no word can hold up whoever asks.
 */
public final class WordPattern {
    private static final char ANY = '*';

    private final String pattern;

    /**
     * Reads a pattern.
     *
     * @param text a word, with {@code *} or without
     */
    public WordPattern(String text) {
        this.pattern = folded(text);
    }

    /**
     * Whether a word is meant.
     *
     * @param word any text
     * @return true if it is what the pattern says, from its beginning to its end
     */
    public boolean matches(String word) {
        String text = folded(word);
        int inPattern = 0;
        int inText = 0;
        int star = -1;
        int startOfRest = 0;
        while (inText < text.length()) {
            if (inPattern < pattern.length() && pattern.charAt(inPattern) == ANY) {
                star = inPattern++;
                startOfRest = inText;
            } else if (inPattern < pattern.length() && pattern.charAt(inPattern) == text.charAt(inText)) {
                inPattern++;
                inText++;
            } else if (star >= 0) {
                inPattern = star + 1;
                inText = ++startOfRest;
            } else {
                return false;
            }
        }
        return pattern.chars().skip(inPattern).allMatch(rest -> rest == ANY);
    }

    private static String folded(String text) {
        StringBuilder folded = new StringBuilder(text.length());
        text.codePoints().map(WordPattern::folded).forEach(folded::appendCodePoint);
        return folded.toString();
    }

    /**
     * A character without its case. Unicode's CaseFolding.txt folds neither the dotless i (U+0131) nor the dotted capital (U+0130) to an i,
     * but for Turkic languages: there they are letters of their own.
     */
    private static int folded(int point) {
        return point == 0x0130 || point == 0x0131 ? point : Character.toLowerCase(Character.toUpperCase(point));
    }
}
