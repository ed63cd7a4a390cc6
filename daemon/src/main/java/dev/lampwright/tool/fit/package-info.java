/**
 * The guided fitting: steps that each light something, ask what is seen, and add the result to the {@code Findings}. Start with
 * {@code GuidedFitting}, which lists the steps and runs them; each {@code …Step} is one, and {@code FittingBench} is what a step shows,
 * says and asks with. {@code AnswerJournal} keeps the answers, {@code ConfigText} writes the file. Light goes from {@code Scene} through
 * {@code GuardedFrames} to the controller ({@code LitSetup}). Knows the link and the guards, but nothing about looks, cues, the engine or
 * the command line; all light passes the guards.
 */
package dev.lampwright.tool.fit;
