/**
 * The documents: what holds them together, and the HTML that the package has of them. Not in the jar, so the library that reads Markdown weighs
 * nothing when the daemon runs.
 */
package dev.lampwright.handbook;
