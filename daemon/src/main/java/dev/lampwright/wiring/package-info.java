/**
 * How the lights are wired: supplies, wires, connectors and fuses as the configuration describes them, and what copper is. Immutable
 * descriptions; {@code tool.plan} judges them.
 */
package dev.lampwright.wiring;
