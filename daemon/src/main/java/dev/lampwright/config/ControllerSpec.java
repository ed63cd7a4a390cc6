package dev.lampwright.config;

import dev.lampwright.protocol.Setup;

/**
 * The controller, and how it is set up. Where this is the same in another configuration, the line to it stays open.
 *
 * @param port serial port of the controller
 * @param baud bits a second on the line
 * @param setup what is fitted to the controller, and its limits
 */
public record ControllerSpec(String port, int baud, Setup setup) {}
