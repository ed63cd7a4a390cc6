/**
 * The last stage before the wire: limits that hold whatever the looks demand. Whole numbers, calculated from the exact bytes that are sent.
 */
package dev.lampwright.guard;
