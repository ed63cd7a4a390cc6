package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.util.Optional;

/** The strip and the dimmers of one controller, which show one scene after the other. */
public interface ShownLight extends AutoCloseable {
    /**
     * Shows a scene until the next, and returns once the controller reports that it is shown, or after a few seconds.
     *
     * @param setup the controller's set-up; costs nothing if it is already active
     * @param scene what to show
     * @return empty if it is shown; otherwise what is wrong, while attempts continue
     */
    Optional<Phrase> show(Setup setup, Scene scene);

    /**
     * Whether the scene has been shown without interruption since {@link #show} returned.
     *
     * @return false if the controller was missing, even for a moment
     */
    boolean steady();

    /**
     * What has interrupted the scene, and what to do.
     *
     * @return the cause; empty if it was {@link #steady}, or if unknown
     */
    default Optional<Phrase> disturbance() {
        return Optional.empty();
    }

    /**
     * What keeps the scene from being shown at this moment.
     *
     * @return what is wrong, with what to do; empty if nothing is
     */
    default Optional<Phrase> missing() {
        return Optional.empty();
    }

    /** Leaves everything dark. */
    @Override
    void close();
}
