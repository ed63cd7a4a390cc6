/**
 * What the daemon reports to Prometheus, on loopback and only if configured. Collected on request, from counters that exist anyway; no
 * other part knows about it. The only place that imports the Prometheus library.
 */
package dev.lampwright.metrics;
