/**
 * Writing JSON (RFC 8259): objects and arrays that are built piece by piece. Besides {@code payload}, the only place that imports the JSON
 * library's writers. Depends on no other package.
 */
package dev.lampwright.json;
