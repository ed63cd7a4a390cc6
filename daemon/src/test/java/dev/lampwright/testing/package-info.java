/** What several tests need: waiting for a condition, and a real broker. */
package dev.lampwright.testing;
