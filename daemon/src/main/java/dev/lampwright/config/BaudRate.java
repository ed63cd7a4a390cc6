package dev.lampwright.config;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/** Bits per second on the serial line. */
public final class BaudRate {
    /**
     * The rates of the Linux kernel's {@code termbits.h} from 9600 to 3000000, and 250000, which a controller at 8 or 16 MHz generates
     * exactly (datasheet of the ATmega328P, tables of baud rates; from memory).
     */
    private static final List<Integer> RATES = List.of(
            9_600, 19_200, 38_400, 57_600, 115_200, 230_400, 250_000, 460_800, 500_000, 576_000, 921_600, 1_000_000,
            1_152_000, 1_500_000, 2_000_000, 2_500_000, 3_000_000);

    /** The smallest. */
    static final int LEAST = Collections.min(RATES);

    /** The largest. */
    static final int MOST = Collections.max(RATES);

    private BaudRate() {}

    /**
     * Reads a rate, by the rules of {@code controller.baud}.
     *
     * @param text what was given
     * @return a rate that serial ports support
     * @throws IllegalArgumentException if it is not valid; the message says what is wrong and what would be valid, and is meant to follow
     *     the name of the key
     */
    public static int parse(String text) {
        int baud = whole(text);
        if (baud < LEAST || baud > MOST) {
            throw outside(text);
        }
        return requireUsual(baud);
    }

    /** Accepts a rate between least and most if it is a standard one. */
    static int requireUsual(int baud) {
        if (!RATES.contains(baud)) {
            int nearest = Collections.min(RATES, Comparator.comparingInt(rate -> Math.abs(rate - baud)));
            throw new IllegalArgumentException("is " + baud
                    + ", which is not a usual rate; give the rate of the firmware, for instance " + nearest);
        }
        return baud;
    }

    private static int whole(String text) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException e) {
            throw outside(text);
        }
    }

    private static IllegalArgumentException outside(String text) {
        return new IllegalArgumentException("is " + text + "; give a whole number from " + LEAST + " to " + MOST);
    }
}
