package dev.lampwright.payload;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalLong;

/** What stands at one place in a payload, whatever format it came in. */
public sealed interface Value {
    /**
     * The value as a word, as a binding may name it: a text as it is; a number, true, false and null as JSON writes them.
     *
     * @return empty for a {@link Structure}
     */
    Optional<String> word();

    /**
     * A number. One that is written as a decimal or with an exponent is never equal to a whole one: 1.0 and 1 are different words.
     *
     * @param number finite or, if it is written too large for a double, infinite; never NaN
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
         * The number, if it is a whole one.
         *
         * @return empty if it is written with a point or an exponent, or does not fit into 64 bits
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

    /** JSON's null: the sender says that there is no value. */
    record None() implements Value {
        @Override
        public Optional<String> word() {
            return Optional.of("null");
        }
    }

    /** A JSON object or array, which is no single value. */
    record Structure() implements Value {
        @Override
        public Optional<String> word() {
            return Optional.empty();
        }
    }
}
