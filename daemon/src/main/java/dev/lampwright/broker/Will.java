package dev.lampwright.broker;

/**
 * What a broker publishes for us when the connection breaks off (MQTT 3.1.1, section 3.1.2.5), and what we publish in its place when
 * we leave in good order. Both are retained.
 *
 * @param topic where, without wildcards
 * @param lost what the broker publishes when it has lost us
 * @param goodbye what we publish last
 */
public record Will(String topic, String lost, String goodbye) {}
