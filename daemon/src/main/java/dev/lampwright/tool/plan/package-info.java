/**
 * The electrical plan of the fitted lights: demand, voltage along wire and strip, wire, fuse, margins, and the picture to wire from.
 * Pure numbers and text from what is fitted; knows no files, no looks and no printer.
 */
package dev.lampwright.tool.plan;
