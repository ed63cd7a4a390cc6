/**
 * What the log looks like: lines for a terminal or for the journal, on standard error. Logback is configured in code, which starts faster
 * than a file would. The only place that imports it.
 */
package dev.lampwright.log;
