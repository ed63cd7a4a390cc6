/** What the hot path costs, measured by JMH. Run by {@link dev.lampwright.benchmark.Suite}, never by a test. */
package dev.lampwright.benchmark;
