/**
 * Tools that run alongside the daemon and end by themselves: fitting, survey, plan, checks, replays and pictures. A tool may use the parts of
 * the daemon; the daemon uses none of them, and only the command line calls them.
 */
package dev.lampwright.tool;
