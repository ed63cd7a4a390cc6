/**
 * What several tests need: waiting for a condition, a real broker, controllers behind real device nodes (in memory, and the firmware
 * on an emulated board), and the jar as a process.
 */
package dev.lampwright.testing;
