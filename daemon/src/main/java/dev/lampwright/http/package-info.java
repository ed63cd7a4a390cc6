/**
 * What applies to every HTTP server of the process, because the JDK's server has process-wide settings, and retries for servers that cannot
 * be opened. Depends on no other package.
 */
package dev.lampwright.http;
