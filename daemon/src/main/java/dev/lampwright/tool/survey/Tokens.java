package dev.lampwright.tool.survey;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Splits names into words. */
final class Tokens {
    private static final Pattern HUMP =
            Pattern.compile("(?<=\\p{Ll})(?=\\p{Lu})|(?<=\\p{L})(?=\\p{N})|(?<=\\p{N})(?=\\p{L})");
    private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");
    private static final Pattern ACCENT = Pattern.compile("\\p{M}+");

    private Tokens() {}

    /**
     * The words of a name.
     *
     * @param name for example {@code bedTemp_C} or {@code BUSE-consigne}
     * @return lower case without accents: {@code bed temp c}
     */
    static List<String> of(String name) {
        String spaced = HUMP.matcher(name).replaceAll(" ");
        return BETWEEN.splitAsStream(plain(spaced))
                .filter(token -> !token.isEmpty())
                .toList();
    }

    /** A text in lower case without accents. */
    static String plain(String text) {
        String stripped =
                ACCENT.matcher(Normalizer.normalize(text, Normalizer.Form.NFD)).replaceAll("");
        return stripped.toLowerCase(Locale.ROOT)
                .replace("ß", "ss")
                .replace("æ", "ae")
                .replace("œ", "oe")
                .replace("ł", "l")
                .replace("ø", "o")
                .replace("đ", "d")
                .replace("ı", "i");
    }
}
