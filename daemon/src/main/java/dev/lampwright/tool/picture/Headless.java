package dev.lampwright.tool.picture;

/** Tells the drawing library that there is no display, which it looks for when it is first used, and fails without one. */
final class Headless {
    private Headless() {}

    /** To be called before anything of the drawing library is. */
    static void begin() {
        System.setProperty("java.awt.headless", "true");
    }
}
