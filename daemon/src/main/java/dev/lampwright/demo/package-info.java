/**
 * What the demo needs and no hardware gives: a controller that lives in memory, and the line to it. The daemon's own code runs
 * unchanged against them.
 */
package dev.lampwright.demo;
