package dev.lampwright.printer;

/**
 * Where the printer says one quantity.
 *
 * @param topicFilter MQTT topic filter, which may have {@code +} and {@code #}
 * @param path where the value stands in the payload
 * @param scale the value is multiplied by this
 * @param offset and then this is added
 */
public record Binding(String topicFilter, PayloadPath path, double scale, double offset) {}
