package dev.lampwright.toml;

import java.util.Random;

/** Spoils texts. */
public final class Mutation {
    private static final String PIECES = "[]{}\"'=.,#\\\n\r\t \0uU0a-\uD83D";

    private Mutation() {}

    /**
     * A text with some characters removed, inserted, changed or cut off.
     *
     * @param text any text
     * @param random random numbers
     * @return another text, or occasionally the same
     */
    public static String of(String text, Random random) {
        StringBuilder spoilt = new StringBuilder(text);
        for (int i = random.nextInt(8); i >= 0; i--) {
            int at = random.nextInt(spoilt.length() + 1);
            char piece = PIECES.charAt(random.nextInt(PIECES.length()));
            switch (random.nextInt(8)) {
                case 0 -> spoilt.setLength(at);
                case 1, 2 -> spoilt.delete(at, Math.min(spoilt.length(), at + 1 + random.nextInt(3)));
                case 3, 4 -> spoilt.replace(at, Math.min(spoilt.length(), at + 1), String.valueOf(piece));
                default -> spoilt.insert(at, piece);
            }
        }
        return spoilt.toString();
    }
}
