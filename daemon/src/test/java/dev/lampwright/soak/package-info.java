/**
 * The soak: the daemon's jar, a real broker and a controller, disturbed for any length of time, while everything that the controller shows
 * is judged from outside. {@link dev.lampwright.soak.Soak} is the command. The judges share nothing with the daemon except the wire's
 * messages.
 */
package dev.lampwright.soak;
