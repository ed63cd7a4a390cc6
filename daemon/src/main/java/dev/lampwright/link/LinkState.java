package dev.lampwright.link;

/** How far the link has come. */
public enum LinkState {
    /** The line is not open. */
    DOWN,
    /** The line is open, and nobody has answered yet. */
    ASKING,
    /** A controller has answered and is being set up. */
    SETTING_UP,
    /** The controller is set up, and shows the frames it is sent as far as is known. */
    LIT,
    /** The controller answers, and for a second has shown none of the frames it was sent. */
    UNLIT
}
