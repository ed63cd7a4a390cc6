package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Frame;

/** What is to be seen while a question is asked. */
@FunctionalInterface
public interface Scene {
    /** Nothing is lit. */
    Scene DARK = (seconds, frame) -> {};

    /**
     * Draws this.
     *
     * @param seconds since it began
     * @param frame a dark frame of the set-up in force
     */
    void draw(double seconds, Frame frame);
}
