package dev.lampwright.payload;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalLong;

/** The value at one place in a payload, whatever its format. */
public sealed interface Value {
    /**
     * The value as a word, as a binding may name it: a text unchanged; a number, true, false and null as in JSON.
     *
     * @return empty for a {@link Structure}
     */
    Optional<String> word();

    /**
     * A number. A decimal, or one with an exponent, is never equal to a whole number: 1.0 and 1 are different words.
     *
     * @param number finite or, if too large for a double, infinite; never NaN
     */
    record Numeric(Number number) implements Value {
        /**
         * The nearest double.
         *
         * @return infinite if the number is larger than any
         */
        public double value() {
            return number.doubleValue();
        }

        /**
         * The number to its last digit; the shortest decimal for a double.
         *
         * @return the same number
         * @throws NumberFormatException if it is infinite
         */
        public BigDecimal exact() {
            return number instanceof BigDecimal decimal ? decimal : new BigDecimal(number.toString());
        }

        /**
         * The number, if whole.
         *
         * @return empty if it has a decimal point or an exponent, or does not fit into 64 bits
         */
        public OptionalLong whole() {
            boolean whole = number instanceof Integer || number instanceof Long;
            return whole ? OptionalLong.of(number.longValue()) : OptionalLong.empty();
        }

        @Override
        public Optional<String> word() {
            return Optional.of(number.toString());
        }
    }

    /**
     * A text.
     *
     * @param text any text, which may be empty
     */
    record Text(String text) implements Value {
        @Override
        public Optional<String> word() {
            return Optional.of(text);
        }
    }

    /**
     * True or false.
     *
     * @param on whether it is true
     */
    record Flag(boolean on) implements Value {
        @Override
        public Optional<String> word() {
            return Optional.of(Boolean.toString(on));
        }
    }

    /** JSON's null: the sender reports that there is no value. */
    record None() implements Value {
        @Override
        public Optional<String> word() {
            return Optional.of("null");
        }
    }

    /** A JSON object or array, which is not a single value. */
    record Structure() implements Value {
        @Override
        public Optional<String> word() {
            return Optional.empty();
        }
    }
}
