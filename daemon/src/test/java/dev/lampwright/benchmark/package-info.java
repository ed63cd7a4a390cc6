/** The cost of the hot path, measured with JMH. Run by {@link dev.lampwright.benchmark.Suite}, never by a test. */
package dev.lampwright.benchmark;
