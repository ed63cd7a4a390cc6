package dev.lampwright.payload;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One field of a line of values with a separator. Fields may be quoted as in RFC 4180, section 2: a quoted field may contain the separator,
 * and a doubled quote for a quote. Of several lines, the first counts.
 *
 * @param number which field, counted from 1
 * @param separator what separates two fields
 */
public record CsvField(int number, char separator) implements Cut {
    private static final char QUOTE = '"';

    /**
     * Checks that such a field is possible.
     *
     * @throws IllegalArgumentException if the number is below 1, or the separator is a quote or a line break
     */
    public CsvField {
        if (number < 1) {
            throw new IllegalArgumentException("is field " + number + "; fields are counted from 1");
        }
        if (separator == QUOTE || separator == '\n' || separator == '\r') {
            throw new IllegalArgumentException("can be no separator; give for instance \";\"");
        }
    }

    @Override
    public Optional<String> from(String text) {
        List<String> fields = fields(text, separator, number);
        return fields.size() < number ? Optional.empty() : Optional.of(fields.get(number - 1));
    }

    /**
     * The fields of a line.
     *
     * @param text the line; text after its end is ignored
     * @param separator what separates two fields
     * @param most how many fields to read
     * @return their texts without quotes, otherwise unchanged; one empty field if the text is empty
     */
    static List<String> fields(String text, char separator, int most) {
        List<String> fields = new ArrayList<>();
        int at = 0;
        while (fields.size() < most) {
            StringBuilder field = new StringBuilder();
            at = readField(text, at, separator, field);
            fields.add(field.toString());
            if (at >= text.length() || text.charAt(at) != separator) {
                break;
            }
            at++;
        }
        return fields;
    }

    /** Reads from a position, and returns where the field ended: at a separator, a line break or the end. */
    private static int readField(String text, int from, char separator, StringBuilder field) {
        boolean quoted = from < text.length() && text.charAt(from) == QUOTE;
        int at = quoted ? from + 1 : from;
        while (at < text.length()) {
            char c = text.charAt(at);
            if (quoted && c == QUOTE) {
                boolean doubled = at + 1 < text.length() && text.charAt(at + 1) == QUOTE;
                quoted = doubled;
                at += doubled ? 1 : 0;
                if (doubled) {
                    field.append(QUOTE);
                }
            } else if (!quoted && (c == separator || c == '\n' || c == '\r')) {
                return at;
            } else {
                field.append(c);
            }
            at++;
        }
        return at;
    }

    @Override
    public String toString() {
        return "field " + number;
    }
}
