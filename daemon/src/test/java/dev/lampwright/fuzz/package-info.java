/**
 * Random attacks on every input: one daemon in this process, built like the command {@code run}, one {@link dev.lampwright.fuzz.Target} for
 * each input, and judges that check log, light and resources after each attack. {@link dev.lampwright.fuzz.Fuzz} is the command. A seed, a
 * target and a number reproduce an attack.
 */
package dev.lampwright.fuzz;
