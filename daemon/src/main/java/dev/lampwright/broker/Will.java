package dev.lampwright.broker;

/**
 * What a broker publishes for us when the connection breaks (MQTT 3.1.1, section 3.1.2.5), and what we publish instead on a clean shutdown.
 * Both are retained.
 *
 * @param topic the topic, without wildcards
 * @param lost what the broker publishes when it has lost the connection
 * @param goodbye what we publish last
 */
public record Will(String topic, String lost, String goodbye) {}
