/**
 * The last stage before the wire: limits that hold whatever the looks ask for. Whole numbers, calculated from the very bytes that
 * leave.
 */
package dev.lampwright.guard;
