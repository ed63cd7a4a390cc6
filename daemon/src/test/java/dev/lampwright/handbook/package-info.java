/**
 * The documents: tests that keep them consistent, and the HTML for the package. Not in the jar, so the Markdown library costs nothing when
 * the daemon runs.
 */
package dev.lampwright.handbook;
