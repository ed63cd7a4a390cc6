package dev.lampwright.soak;

import dev.lampwright.testing.Recording.Entry;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** A controller at the far end of a line that can be troubled. May be used by several threads. */
interface FarEnd extends AutoCloseable {
    /** Its device node, or where it will be. */
    Path port();

    /** Pulls its cable; the device node goes away. */
    void unplug();

    /** Plugs it in again, under the same name. */
    void plug();

    /** Presses its reset button. */
    void restart();

    /** It stops taking bytes, as a board that hangs. */
    void hang();

    /** It goes on after {@link #hang}. */
    void goOn();

    /**
     * Bytes get lost, doubled and changed, both ways.
     *
     * @param seed of the chance
     */
    void corrupt(long seed);

    /** Whether it can be made to refuse frames. */
    boolean canRefuse();

    /** It answers every frame with a complaint. What it shows is another thing: whether the host copes is what matters. */
    void refuse();

    /** Bytes pass again as they are, and frames are acknowledged. */
    void restore();

    /**
     * What has been shown since this was last asked.
     *
     * @param violations told what was wrong with it, as far as only this end can know
     * @return what was shown, oldest first
     */
    List<Entry> drain(Consumer<String> violations);

    /** What it counted, for the summary. */
    String figures();

    @Override
    void close();
}
