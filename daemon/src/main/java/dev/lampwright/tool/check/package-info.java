/**
 * What {@code check} finds out by drawing: a look that fails, flashes too often, or looks like another to somebody with a colour vision
 * deficiency. Each check runs its own chain on invented status.
 */
package dev.lampwright.tool.check;
