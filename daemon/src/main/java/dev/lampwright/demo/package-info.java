/**
 * A workshop that lives in memory: a broker, an invented printer, a controller behind the same link code, and the strip drawn in
 * the terminal. Begin with {@code Demo}, which puts them together. {@code MemoryController} speaks the wire as the firmware does, and
 * tests use it too. Nothing else may depend on this package; the only place that imports the embedded broker.
 */
package dev.lampwright.demo;
