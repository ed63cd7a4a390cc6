/**
 * Listens to a broker to find where a printer reports what. {@link dev.lampwright.tool.survey.Survey} takes messages in and keeps what it
 * saw of each value, within bounds; {@link dev.lampwright.tool.survey.Evidence} weighs what a value may be, one class for each kind of
 * evidence; {@link dev.lampwright.tool.survey.Assignment} decides; {@link dev.lampwright.survey.ProposedConfig} writes it down. Nothing
 * here knows of light, of files or of the terminal.
 */
package dev.lampwright.tool.survey;
