package dev.lampwright.printer;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.regex.Pattern;

/** Takes a number as the reading of a quantity: a JSON number, or text that is one. JSON's null means that it is not known. */
final class ReadingTaker implements Taker {
    private static final int MOST_CHARS = 40;
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

    private final Quantity quantity;
    private final double scale;
    private final double offset;

    ReadingTaker(Quantity quantity, double scale, double offset) {
        this.quantity = quantity;
        this.scale = scale;
        this.offset = offset;
    }

    @Override
    public PrinterStatus take(PrinterStatus before, JsonNode value, long atNanos) throws UnreadableException {
        return before.withReading(quantity, value.isNull() ? Double.NaN : reading(value), atNanos);
    }

    private double reading(JsonNode value) throws UnreadableException {
        return Plausible.value(quantity, number(value) * scale + offset);
    }

    private static double number(JsonNode value) throws UnreadableException {
        if (value.isNumber()) {
            return value.doubleValue();
        }
        String text = value.isTextual() ? value.textValue().strip() : "";
        if (text.length() > MOST_CHARS || !NUMBER.matcher(text).matches()) {
            throw new UnreadableException("the value is no number");
        }
        return Double.parseDouble(text);
    }
}
