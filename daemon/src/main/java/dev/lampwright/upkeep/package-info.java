/**
 * What every part that runs for years needs: pauses between attempts, problems that are logged once as they come and go, and text made safe
 * for the log. Depends on no other package.
 */
package dev.lampwright.upkeep;
