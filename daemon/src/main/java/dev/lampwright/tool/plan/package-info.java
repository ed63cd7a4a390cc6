/**
 * The electrical plan of the fitted lights: demand, voltage along wire and strip, wire, fuse, margins, and the wiring picture. Start with
 * {@code Plan.of}, which calculates everything: from {@code PlannedLights}, via {@code StripModel} and {@code ResistorLadder}, to the
 * {@code Verdict}s of the {@code …Judge}s. {@code PlanText}, {@code PlanValues} and {@code PlanPicture} with its {@code …Drawing}s show it.
 * Pure numbers and text from what is fitted; knows no files, no looks and no printer.
 */
package dev.lampwright.tool.plan;
