package dev.lampwright.config;

import dev.lampwright.protocol.Setup;

/**
 * The controller, and its set-up. If this is the same in another configuration, the line stays open.
 *
 * @param port serial port of the controller
 * @param baud bits per second on the line
 * @param setup what is fitted to the controller, and its limits
 */
public record ControllerSpec(String port, int baud, Setup setup) {}
