/**
 * What people ask for while the daemon runs, whichever way it comes: by message, command or page. Asks are checked, answered in words, and
 * become {@link dev.lampwright.cue.Wishes}; the daemon's report on itself is written here too. Knows light, but nothing of wires, files or
 * threads: clocks and slots are passed in.
 */
package dev.lampwright.desk;
