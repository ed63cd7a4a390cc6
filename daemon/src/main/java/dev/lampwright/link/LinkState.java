package dev.lampwright.link;

/** How far the link has come. */
public enum LinkState {
    /** The line is not open. */
    DOWN,
    /** The line is open, and no controller has answered yet. */
    ASKING,
    /** A controller has answered and is being set up. */
    SETTING_UP,
    /** The controller is set up, and shows the frames sent to it, as far as is known. */
    LIT,
    /** The controller answers, but for a second has shown none of the frames sent to it. */
    UNLIT
}
