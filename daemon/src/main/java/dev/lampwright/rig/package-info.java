/**
 * Many rigs in one process: each is a daemon with a name, and what becomes of one changes nothing for another. Knows what to run, and not how
 * it is looked at: page, metrics and command line ask it.
 */
package dev.lampwright.rig;
