package dev.lampwright.broker;

import java.lang.ref.WeakReference;
import java.util.function.BiConsumer;

/**
 * The threads of one broker client: its own, and those that Paho starts from them.
 *
 * <p>Paho 1.2.5 wakes its sending thread once when a connection ends. A thread that is just about to wait for work misses that and waits
 * for ever: each such connection would leave a thread behind. When interrupted, it checks again, finds no connection, and ends.
 */
final class BrokerThreads extends ThreadGroup {
    private static final String SENDER = "MQTT Snd: ";

    /** Threads may start between counting and listing; a missed one is found the next time. */
    private static final int ROOM = 8;

    /** Held weakly: on Java 17 the parent group keeps this one for ever, and must not keep a whole client with it. */
    private final WeakReference<BiConsumer<Thread, Throwable>> dying;

    /**
     * Creates a group without threads.
     *
     * @param dying receives each thread that ends with an exception; Paho's do so silently when a broker sends something unexpected. The
     *     creator must hold a reference to it
     */
    BrokerThreads(BiConsumer<Thread, Throwable> dying) {
        super("printer");
        this.dying = new WeakReference<>(dying);
    }

    /** Ends the senders of a connection that is over. Call this while there is none. */
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
