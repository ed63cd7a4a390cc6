/**
 * The guided fitting: steps that each light something, ask what is seen, and add what that tells to the {@link
 * dev.lampwright.tool.fit.Findings}. Knows the link and the guards, and nothing of looks, cues, the engine or the command line; no light
 * leaves but through the guards.
 */
package dev.lampwright.tool.fit;
