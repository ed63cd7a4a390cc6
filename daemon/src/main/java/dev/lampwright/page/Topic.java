package dev.lampwright.page;

import java.util.Locale;

/** What a viewer is told of, in the order in which it is sent. Of each, only the newest counts. */
enum Topic {
    /** What is fitted, and what can be asked for. */
    LAYOUT,
    /** How the daemon does. */
    REPORT,
    /** The current over the last minutes. */
    CURRENT,
    /** What went wrong of late. */
    TROUBLES,
    /** What the lights show. */
    FRAME,
    /** All rigs and their states. */
    SHELF,
    /** What their strips show. */
    STRIPS;

    /** The type of its events. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
