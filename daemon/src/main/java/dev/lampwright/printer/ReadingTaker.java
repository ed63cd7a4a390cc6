package dev.lampwright.printer;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.payload.Measure;
import dev.lampwright.payload.Plausible;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.UnreadableException;

/**
 * Takes a number as the reading of a quantity: a JSON number, or text that is one in the unit of the binding. JSON's null means that it is
 * not known.
 */
final class ReadingTaker implements Taker {
    private final Quantity quantity;
    private final Binding binding;

    ReadingTaker(Quantity quantity, Binding binding) {
        this.quantity = quantity;
        this.binding = binding;
    }

    @Override
    public PrinterStatus take(PrinterStatus before, JsonNode value, long atNanos) throws UnreadableException {
        return before.withReading(quantity, value.isNull() ? Double.NaN : reading(value), atNanos);
    }

    private double reading(JsonNode value) throws UnreadableException {
        double told = number(value) * binding.scale() + binding.offset();
        return Plausible.value(quantity, binding.unit(), told);
    }

    private double number(JsonNode value) throws UnreadableException {
        if (value.isNumber() && binding.unit().numeric()) {
            return value.doubleValue();
        }
        if (!value.isTextual()) {
            throw new UnreadableException(binding.unit().numeric() ? "the value is no number" : "the value is no text");
        }
        return Measure.of(value.textValue().strip(), binding.unit());
    }
}
