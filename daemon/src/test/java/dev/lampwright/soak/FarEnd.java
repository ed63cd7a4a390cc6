package dev.lampwright.soak;

import dev.lampwright.testing.Recording.Entry;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** A controller at the far end of a line that can be disturbed. May be used by several threads. */
interface FarEnd extends AutoCloseable {
    /** Its device node, or where it will be. */
    Path port();

    /** Pulls its cable; the device node goes away. */
    void unplug();

    /** Plugs it in again, under the same name. */
    void plug();

    /** Presses its reset button. */
    void restart();

    /** It stops accepting bytes, like a hanging board. */
    void hang();

    /** It continues after {@link #hang}. */
    void goOn();

    /**
     * Bytes get lost, doubled and changed, in both directions.
     *
     * @param seed of the random numbers
     */
    void corrupt(long seed);

    /** Whether it can be made to refuse frames. */
    boolean canRefuse();

    /** It answers every frame with a complaint. What it shows does not matter, only whether the host copes. */
    void refuse();

    /** Bytes pass unchanged again, and frames are acknowledged. */
    void restore();

    /**
     * What has been shown since the last call.
     *
     * @param violations receives what was wrong with it, as far as only this end can know
     * @return what was shown, oldest first
     */
    List<Entry> drain(Consumer<String> violations);

    /** What it counted, for the summary. */
    String figures();

    @Override
    void close();
}
