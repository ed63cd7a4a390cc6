package dev.lampwright.colour;

import java.util.HexFormat;
import java.util.Optional;

/** Colours in hexadecimal. Source: CSS Color Module Level 4, "The RGB Hexadecimal Notations". */
final class HexColour {
    private static final double FULL = 255;

    private HexColour() {}

    /**
     * Reads digits.
     *
     * @param digits the text after the number sign
     * @return the colour, if there are 3, 4, 6 or 8 digits and nothing else
     */
    static Optional<Colour> of(String digits) {
        if (!digits.chars().allMatch(HexFormat::isHexDigit)) {
            return Optional.empty();
        }
        return switch (digits.length()) {
            case 3, 4 -> Optional.of(colour(digits, 1, 0x11));
            case 6, 8 -> Optional.of(colour(digits, 2, 1));
            default -> Optional.empty();
        };
    }

    private static Colour colour(String digits, int width, int factor) {
        double[] values = {0, 0, 0, 1};
        for (int i = 0; i < digits.length() / width; i++) {
            values[i] = HexFormat.fromHexDigits(digits, width * i, width * (i + 1)) * factor / FULL;
        }
        return new Colour(Space.SRGB, new Triple(values[0], values[1], values[2]), values[3]);
    }
}
