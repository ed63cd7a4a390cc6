/**
 * What a service manager is told: sd_notify(3), spoken straight to its socket. The only place that imports JNA, which is loaded only
 * where there is such a socket.
 */
package dev.lampwright.service;
