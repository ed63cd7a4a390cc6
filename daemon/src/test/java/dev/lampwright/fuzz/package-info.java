/**
 * Attacks by chance on everything that comes in from outside: one daemon in this process, put together as the command {@code run} does,
 * one {@link dev.lampwright.fuzz.Target} for each way in, and judges that look at log, light and resources after each attack.
 * {@link dev.lampwright.fuzz.Fuzz} is the command. A seed, a target and a number make the same attack again.
 */
package dev.lampwright.fuzz;
