package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Frame;

/** What is shown while a question is asked. */
@FunctionalInterface
public interface Scene {
    /** Nothing is lit. */
    Scene DARK = (seconds, frame) -> {};

    /**
     * Draws this.
     *
     * @param seconds since it began
     * @param frame a dark frame of the active set-up
     */
    void draw(double seconds, Frame frame);
}
