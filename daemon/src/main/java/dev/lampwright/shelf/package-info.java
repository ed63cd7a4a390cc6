/**
 * One view of all rigs: every daemon at a broker, found by its retained status, sorted by what needs attention first. It only listens.
 * Depends on broker and JSON; knows neither how it is shown nor a daemon in this process.
 */
package dev.lampwright.shelf;
