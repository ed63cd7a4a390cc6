/**
 * A workshop in memory: a broker, an invented printer, a controller behind the same link code, and the strip drawn in the terminal. Start
 * with {@code Demo}, which combines them. {@code MemoryController} implements the wire like the firmware, and tests use it too. Nothing
 * else may depend on this package; the only place that imports the embedded broker.
 */
package dev.lampwright.demo;
