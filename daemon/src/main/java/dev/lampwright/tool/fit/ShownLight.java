package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Setup;
import java.util.Optional;

/** The strip and the dimmers of one controller, which show one scene after the other. */
public interface ShownLight extends AutoCloseable {
    /**
     * Shows a scene until the next, and returns once the controller says that it is shown, or after a few seconds.
     *
     * @param setup what to set the controller up with; costs nothing if it is the one in force
     * @param scene what is to be seen
     * @return empty if it is shown; else what is wrong, and it is still being tried
     */
    Optional<String> show(Setup setup, Scene scene);

    /**
     * Whether the scene has been there all the time since {@link #show} returned.
     *
     * @return false if the controller was away, even for a moment
     */
    boolean steady();

    /**
     * What has kept the scene from being there all the time, and what to do.
     *
     * @return words to follow a colon; empty if it was {@link #steady}, or nobody knows
     */
    default Optional<String> disturbance() {
        return Optional.empty();
    }

    /** Leaves everything dark. */
    @Override
    void close();
}
