/**
 * How the lights are wired: supplies, wires, connectors and fuses as the configuration describes them, and the properties of copper. Start
 * with {@code Wiring}, the whole of it, and {@code Wire}. Immutable descriptions; {@code tool.plan} judges them.
 */
package dev.lampwright.wiring;
