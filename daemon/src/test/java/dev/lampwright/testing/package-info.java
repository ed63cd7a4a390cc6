/**
 * What several tests need: waiting for a condition, a real broker, controllers behind real device nodes (in memory, and the firmware on an
 * emulated board), the jar as a process, and judges of what is shown and of the current that it draws.
 */
package dev.lampwright.testing;
