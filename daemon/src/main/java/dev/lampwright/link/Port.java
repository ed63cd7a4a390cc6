package dev.lampwright.link;

/**
 * A serial port that is there.
 *
 * @param path its device node, {@code /dev/ttyACM0}
 * @param stablePath a name that stays the same whatever else is plugged in, below {@code /dev/serial/by-id}; empty if it has none
 * @param description maker and product as the device tells them; empty if it tells none
 */
public record Port(String path, String stablePath, String description) {}
