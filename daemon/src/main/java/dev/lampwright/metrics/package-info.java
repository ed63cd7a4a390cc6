/**
 * What the daemon tells Prometheus, on loopback and only where the configuration asks for it. Collected when it is asked for, from
 * counters that are there anyway; no other part knows of it. The only place that imports the Prometheus library.
 */
package dev.lampwright.metrics;
