/**
 * What the log looks like: lines for a terminal or for the journal, on the standard error. Logback is set up in code, which starts sooner
 * than a file would. The only place that imports it.
 */
package dev.lampwright.log;
