package dev.lampwright.link;

/** How far the link has come. */
public enum LinkState {
    /** The line is not open. */
    DOWN,
    /** The line is open, and nobody has answered yet. */
    ASKING,
    /** A controller has answered and is being set up. */
    SETTING_UP,
    /** The controller is set up and takes frames. */
    LIT
}
