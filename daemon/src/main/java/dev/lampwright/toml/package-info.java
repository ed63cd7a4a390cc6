/**
 * Reads TOML 1.0: values, the line of every key, and all syntax mistakes of a text at once. What the keys mean is the business of {@code config};
 * nothing here knows Lampwright or any library.
 */
package dev.lampwright.toml;
