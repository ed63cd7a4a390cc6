package dev.lampwright.link;

/**
 * An existing serial port.
 *
 * @param path its device node, {@code /dev/ttyACM0}
 * @param stablePath a name that stays the same whatever else is plugged in, below {@code /dev/serial/by-id}; empty if it has none
 * @param description manufacturer and product as reported by the device; empty if it reports none
 */
public record Port(String path, String stablePath, String description) {}
