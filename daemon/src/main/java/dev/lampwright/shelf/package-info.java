/**
 * One view of all rigs: every daemon at a broker, found by the status that it keeps there, sorted by what needs a person first. It only listens.
 * Knows broker and JSON; neither how it is shown nor a daemon in this process.
 */
package dev.lampwright.shelf;
