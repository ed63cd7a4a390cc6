/**
 * The fixed-rate loop that runs the chain from status and time to bytes, and the one place where the daemon is put together.
 */
package dev.lampwright.engine;
