/**
 * What every part that runs for years needs: pauses between attempts, trouble that is logged once as it comes and goes, and text made fit for
 * the log. Knows no other package.
 */
package dev.lampwright.upkeep;
