package dev.lampwright.payload;

/**
 * A word in which {@code *} stands for any characters, or none; case does not count. Matching takes at most the product of the lengths of
 * pattern and word in steps, and does not recurse, so no pattern and no word can stall the caller.
 */
public final class WordPattern {
    private static final char ANY = '*';

    private final String pattern;

    /**
     * Reads a pattern.
     *
     * @param text a word, with or without {@code *}
     */
    public WordPattern(String text) {
        this.pattern = folded(text);
    }

    /**
     * Whether a word matches.
     *
     * @param word any text
     * @return true if the pattern matches the whole word
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
     * except for Turkic languages, in which they are separate letters.
     */
    private static int folded(int point) {
        return point == 0x0130 || point == 0x0131 ? point : Character.toLowerCase(Character.toUpperCase(point));
    }
}
