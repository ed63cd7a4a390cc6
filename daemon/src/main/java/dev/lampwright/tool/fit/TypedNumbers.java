package dev.lampwright.tool.fit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;

/** Numbers as people type them, and as they are shown. */
final class TypedNumbers {
    private TypedNumbers() {}

    /**
     * Reads a number; a decimal comma is accepted.
     *
     * @param line what was typed
     * @param least the minimum
     * @param most the maximum
     * @return the number
     * @throws Question.UnusableException if it is not a number, or outside
     */
    static double read(String line, double least, double most) throws Question.UnusableException {
        String wanted = "type a number from " + shown(least) + " to " + shown(most);
        try {
            double number = new BigDecimal(line.replace(',', '.')).doubleValue();
            if (number < least || number > most) {
                throw new Question.UnusableException(
                        "number_outside",
                        line + " is not possible here: " + wanted,
                        "typed",
                        line,
                        "least",
                        least,
                        "most",
                        most);
            }
            return number;
        } catch (NumberFormatException e) {
            throw new Question.UnusableException("number", wanted, "least", least, "most", most);
        }
    }

    /** Reads a number, or nothing from an empty line. */
    static OptionalDouble readIfThere(String line, double least, double most) throws Question.UnusableException {
        return line.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(read(line, least, most));
    }

    /** Reads a whole number. */
    static int readWhole(String line, int least, int most) throws Question.UnusableException {
        double number = read(line, least, most);
        if (number != Math.rint(number)) {
            throw new Question.UnusableException(
                    "number_whole", "type a whole number from " + least + " to " + most, "least", least, "most", most);
        }
        return (int) number;
    }

    /** A number without trailing zeros, to three decimals at most. */
    static String shown(double number) {
        BigDecimal rounded =
                BigDecimal.valueOf(number).setScale(3, RoundingMode.HALF_UP).stripTrailingZeros();
        return rounded.setScale(Math.max(0, rounded.scale()), RoundingMode.UNNECESSARY)
                .toPlainString();
    }

    /** A number rounded up to a tenth, so that a current used for limits is never too low. */
    static double upToTenth(double number) {
        return BigDecimal.valueOf(number).setScale(1, RoundingMode.CEILING).doubleValue();
    }
}
