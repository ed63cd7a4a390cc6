package dev.lampwright.config;

import dev.lampwright.toml.TomlDocument;
import java.nio.file.Path;

/**
 * A file that says a part of a configuration.
 *
 * @param file what to call it in complaints
 * @param document what it says
 * @param folder where relative paths in it start
 */
record Origin(String file, TomlDocument document, Path folder) {}
