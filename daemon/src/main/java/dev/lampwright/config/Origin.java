package dev.lampwright.config;

import dev.lampwright.toml.TomlDocument;
import java.nio.file.Path;

/**
 * A file with a part of a configuration, or all of it.
 *
 * @param file what to call it in messages
 * @param document what it says
 * @param folder where relative paths in it start
 */
record Origin(String file, TomlDocument document, Path folder) {}
