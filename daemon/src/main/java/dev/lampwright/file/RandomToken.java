package dev.lampwright.file;

import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.regex.Pattern;

/** Tokens that nobody can guess: 128 random bits, as lower-case hexadecimal digits. */
public final class RandomToken {
    private static final int BYTES = 16;
    private static final Pattern FORM = Pattern.compile("[0-9a-f]{" + 2 * BYTES + "}");
    private static final SecureRandom RANDOM = new SecureRandom();

    private RandomToken() {}

    /**
     * Makes one.
     *
     * @return 32 digits, different each time
     */
    public static String make() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    /**
     * Whether a text has the form of one.
     *
     * @param text any text
     * @return false for texts that this class never makes
     */
    public static boolean isOne(String text) {
        return FORM.matcher(text).matches();
    }
}
