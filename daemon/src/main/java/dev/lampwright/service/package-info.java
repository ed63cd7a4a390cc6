/**
 * What a service manager is told, sd_notify(3), spoken straight to its socket; and what else takes the C library. The only place that imports
 * JNA, which is loaded only where there is such a socket or where a service manager hides what the system tells others.
 */
package dev.lampwright.service;
