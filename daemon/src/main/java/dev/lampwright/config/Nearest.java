package dev.lampwright.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Finds the word that somebody may have meant. */
public final class Nearest {
    private static final int LETTERS_A_SLIP = 3;

    /** No typing error is longer; a file may be. */
    private static final int LONGEST = 200;

    /** Old names of keys, and their new names. */
    private static final Map<String, String> RENAMED = Map.of(
            "target_C", "setpoint_C",
            "spark_K", "strike_K",
            "sparks_per_px_s", "strikes_per_px_s",
            "cooling_s", "time_constant_s");

    private Nearest() {}

    /**
     * The word closest to an unknown one.
     *
     * @param word what was written
     * @param known the valid words
     * @return the closest, if close enough: about one letter in three wrong, or one word being the beginning of the other
     */
    public static Optional<String> to(String word, Collection<String> known) {
        if (word.length() > LONGEST) {
            return Optional.empty();
        }
        return renamed(word).filter(known::contains).or(() -> nearest(word, known));
    }

    /** The new name of a key, also for a dotted key. */
    private static Optional<String> renamed(String word) {
        int dot = word.lastIndexOf('.') + 1;
        return Optional.ofNullable(RENAMED.get(word.substring(dot))).map(name -> word.substring(0, dot) + name);
    }

    private static Optional<String> nearest(String word, Collection<String> known) {
        return known.stream()
                .filter(candidate -> isNear(folded(word), folded(candidate)))
                .min(Comparator.comparingInt(candidate -> distance(folded(word), folded(candidate))));
    }

    /**
     * Levenshtein's distance, with Damerau's swap (as optimal string alignment): how many letters must be inserted, removed, changed, or
     * swapped with their neighbour.
     *
     * @param from one word
     * @param to the other
     * @return 0 if they are the same
     */
    static int distance(String from, String to) {
        int[][] table = new int[from.length() + 1][to.length() + 1];
        for (int i = 0; i <= from.length(); i++) {
            for (int j = 0; j <= to.length(); j++) {
                table[i][j] = i == 0 || j == 0 ? i + j : least(table, from, to, i, j);
            }
        }
        return table[from.length()][to.length()];
    }

    private static int least(int[][] table, String from, String to, int i, int j) {
        int changed = table[i - 1][j - 1] + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
        int least = Math.min(changed, 1 + Math.min(table[i - 1][j], table[i][j - 1]));
        boolean swapped =
                i > 1 && j > 1 && from.charAt(i - 1) == to.charAt(j - 2) && from.charAt(i - 2) == to.charAt(j - 1);
        return swapped ? Math.min(least, table[i - 2][j - 2] + 1) : least;
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
