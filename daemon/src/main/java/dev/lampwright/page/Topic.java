package dev.lampwright.page;

import java.util.Locale;

/** The kinds of news for a viewer, in the order in which they are sent. For each, only the newest counts. */
enum Topic {
    /** What is fitted, and what can be asked for. */
    LAYOUT,
    /** The daemon's status. */
    REPORT,
    /** The current over the last minutes. */
    CURRENT,
    /** Recent problems. */
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
