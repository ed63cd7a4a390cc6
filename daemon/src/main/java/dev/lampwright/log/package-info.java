/**
 * Where the log goes: what SLF4J finds when it looks for a provider. A line for a terminal or for the journal; no files, no settings
 * of its own. Knows no other package of the daemon.
 */
package dev.lampwright.log;
