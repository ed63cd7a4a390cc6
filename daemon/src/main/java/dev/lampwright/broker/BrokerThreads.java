package dev.lampwright.broker;

import java.lang.ref.WeakReference;
import java.util.function.BiConsumer;

/**
 * The threads of one broker client: its own, and those that Paho starts from it.
 *
 * <p>Paho 1.2.5 wakes its sending thread once when a connection ends. One that is just then about to wait for work misses that and waits
 * for good: each such connection would leave a thread behind. Interrupted, it looks again, finds no connection, and ends.
 */
final class BrokerThreads extends ThreadGroup {
    private static final String SENDER = "MQTT Snd: ";

    /** Threads may be started between counting and listing; one that is missed is found the next time. */
    private static final int ROOM = 8;

    /** Held weakly: on Java 17 the group above keeps this one for good, and must not keep a whole client with it. */
    private final WeakReference<BiConsumer<Thread, Throwable>> dying;

    /**
     * Makes a group without threads.
     *
     * @param dying told of each thread that ends by what it throws; Paho's do so, without a word to Paho, when a broker sends what Paho
     *     did not expect. To be held by whoever makes this
     */
    BrokerThreads(BiConsumer<Thread, Throwable> dying) {
        super("printer");
        this.dying = new WeakReference<>(dying);
    }

    /** Ends what sends for a connection that is over. To be called while there is none. */
    void endSenders() {
        Thread[] threads = new Thread[activeCount() + ROOM];
        int count = enumerate(threads);
        for (int i = 0; i < count; i++) {
            if (threads[i].getName().startsWith(SENDER)) {
                threads[i].interrupt();
            }
        }
    }

    @Override
    public void uncaughtException(Thread dead, Throwable failure) {
        BiConsumer<Thread, Throwable> told = dying.get();
        if (told != null) {
            told.accept(dead, failure);
        }
    }
}
