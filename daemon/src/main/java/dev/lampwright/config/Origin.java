package dev.lampwright.config;

import dev.lampwright.toml.TomlDocument;
import java.nio.file.Path;

/**
 * A file with a part of a configuration, or all of it.
 *
 * @param file its name in messages
 * @param document its content
 * @param folder the folder against which relative paths in it are resolved
 */
record Origin(String file, TomlDocument document, Path folder) {}
