/**
 * The product as used: the jar as a separate process, between a real broker and a real device node, with a controller in memory or the
 * firmware's own machine code behind it. Expectations follow from standards, datasheets and arithmetic, not from the code under test.
 */
package dev.lampwright.endtoend;
