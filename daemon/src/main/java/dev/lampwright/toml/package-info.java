/**
 * Reads TOML 1.0: values, the line of every key, and all syntax mistakes of a text at once. The meaning of keys belongs to {@code config};
 * nothing here depends on Lampwright or any library.
 */
package dev.lampwright.toml;
