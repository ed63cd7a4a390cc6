package dev.lampwright.config;

/** What the lights do when the daemon is asked to end. */
public enum AtEnd {
    /** They fade out, and stay dark. */
    FADE,
    /** They show at once what they show for a time without a host. */
    WHEN_SILENT
}
