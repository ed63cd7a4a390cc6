/**
 * The file: from TOML to validated values of the other packages. Every message names file, line and key and says what would be valid. The
 * only place that imports the TOML parser. Nothing here acts on what it reads.
 */
package dev.lampwright.config;
