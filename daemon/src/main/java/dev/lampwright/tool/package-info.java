/**
 * Tools that run beside the daemon and end by themselves: fitting, survey, plan, checks, replays and pictures. A tool may use the parts that
 * the daemon is made of; the daemon uses none of them, and only the command line calls them.
 */
package dev.lampwright.tool;
