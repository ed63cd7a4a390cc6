/**
 * What people ask for while the daemon runs, whoever brings it: a message, a command, a page. Asks are checked, answered in words, and
 * become {@link dev.lampwright.cue.Wishes}; what the daemon tells of itself is put into words here too. Knows light and nothing of
 * wires, files or threads: clocks and slots are handed in.
 */
package dev.lampwright.desk;
