package dev.lampwright.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that somebody may have meant. */
final class Nearest {
    private static final int LETTERS_A_SLIP = 3;

    private Nearest() {}

    /**
     * The word that is nearest to one that is not known.
     *
     * @param word what was written
     * @param known what may be written
     * @return the nearest, if it is near: about one letter in three wrong, or one word the beginning of the other
     */
    static Optional<String> to(String word, Collection<String> known) {
        return known.stream()
                .filter(candidate -> isNear(folded(word), folded(candidate)))
                .min(Comparator.comparingInt(candidate -> distance(folded(word), folded(candidate))));
    }

    /**
     * Levenshtein's distance: how many letters must be put in, taken out or changed.
     *
     * @param from one word
     * @param to the other
     * @return 0 if they are the same
     */
    static int distance(String from, String to) {
        int[] row = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int changed = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[to.length()];
    }

    private static boolean isNear(String word, String candidate) {
        int shorter = Math.min(word.length(), candidate.length());
        boolean begins = shorter >= LETTERS_A_SLIP && (word.startsWith(candidate) || candidate.startsWith(word));
        return begins || distance(word, candidate) <= (shorter + 1) / LETTERS_A_SLIP;
    }

    private static String folded(String word) {
        return word.toLowerCase(Locale.ROOT);
    }
}
