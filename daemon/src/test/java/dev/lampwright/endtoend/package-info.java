/**
 * The product as its user has it: the jar as a process of its own, between a real broker and a real device node, with a controller
 * in memory or the firmware's own machine code behind it. What is expected follows from standards, datasheets and arithmetic, not
 * from the code under test.
 */
package dev.lampwright.endtoend;
