/**
 * The soak: the daemon's jar, a real broker and a controller, troubled for as long as one likes, while everything that the controller
 * shows is judged from outside. {@link dev.lampwright.soak.Soak} is the command. Judges here share nothing with the daemon but the
 * wire's messages.
 */
package dev.lampwright.soak;
