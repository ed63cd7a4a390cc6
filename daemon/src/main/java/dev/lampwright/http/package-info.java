/**
 * What holds for every HTTP server of the process, since the JDK's own server keeps such things once for all, and what to do where one
 * cannot be had. Knows no other package.
 */
package dev.lampwright.http;
