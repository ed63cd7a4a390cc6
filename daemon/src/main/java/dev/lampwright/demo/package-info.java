/**
 * A workshop that lives in memory: a broker, an invented printer, a controller behind the same link code, and the strip drawn in
 * the terminal. Nothing else may depend on it; the only place that imports the embedded broker.
 */
package dev.lampwright.demo;
