/**
 * What {@code check} finds out by drawing: a look that fails, flashes too often, or looks like another to somebody with a colour vision
 * deficiency. Each check runs a chain of its own through invented status.
 */
package dev.lampwright.tool.check;
