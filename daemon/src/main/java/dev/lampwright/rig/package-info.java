/**
 * Many rigs in one process: each is a daemon with a name, and a problem in one does not affect another. Knows what to run; page, metrics
 * and command line read from it.
 */
package dev.lampwright.rig;
