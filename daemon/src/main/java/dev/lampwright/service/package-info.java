/**
 * Reports to a service manager, sd_notify(3), sent directly to its socket; and everything else that needs the C library. The only place
 * that imports JNA, which is loaded only if there is such a socket or if a service manager hides system files.
 */
package dev.lampwright.service;
