package dev.lampwright.page;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * A viewer. News is left here without waiting; the viewer's own thread sends it. There is one place for each {@link Topic}, where the
 * newest wins, so a slow viewer misses some and uses no memory.
 */
final class Viewer {
    private static final long STILL_THERE_NANOS = TimeUnit.SECONDS.toNanos(10);
    private static final Topic[] TOPICS = Topic.values();

    private final OutputStream out;
    private final Map<Topic, byte[]> news = new ConcurrentHashMap<>();
    private final Thread thread = Thread.currentThread();
    private volatile boolean gone;
    private volatile boolean writing;
    private volatile long writingSinceNanos;

    /**
     * Creates a viewer, on the thread that will send.
     *
     * @param out its stream
     */
    Viewer(OutputStream out) {
        this.out = out;
    }

    /** Leaves news, replacing older news of the same topic that has not been sent. */
    void tell(Topic topic, byte[] event) {
        news.put(topic, event);
        LockSupport.unpark(thread);
    }

    /** Removes the news of a topic, to send it. */
    Optional<byte[]> take(Topic topic) {
        return Optional.ofNullable(news.remove(topic));
    }

    /** Whether news of a topic has not been sent yet. */
    boolean waits(Topic topic) {
        return news.containsKey(topic);
    }

    /** Ends the stream soon. */
    void dismiss() {
        gone = true;
        LockSupport.unpark(thread);
    }

    /** Ends the stream if it has accepted nothing for long: an interrupt closes a channel that is being written to. */
    void dismissIfStuck(long longestNanos, long nowNanos) {
        if (writing && nowNanos - writingSinceNanos > longestNanos) {
            gone = true;
            thread.interrupt();
        }
    }

    /**
     * Sends at once.
     *
     * @param bytes part of the stream
     * @throws IOException if the viewer has left
     */
    void send(byte[] bytes) throws IOException {
        write(bytes);
        flush();
    }

    private void write(byte[] bytes) throws IOException {
        writingSinceNanos = System.nanoTime();
        writing = true;
        out.write(bytes);
    }

    private void flush() throws IOException {
        out.flush();
        writing = false;
    }

    /**
     * Sends news until dismissed.
     *
     * @throws IOException if the viewer has left
     */
    void serve() throws IOException {
        long lastNanos = System.nanoTime();
        while (!gone) {
            if (sendNews()) {
                lastNanos = System.nanoTime();
            } else if (System.nanoTime() - lastNanos >= STILL_THERE_NANOS) {
                send(ServerEvent.NOTHING);
                lastNanos = System.nanoTime();
            } else {
                LockSupport.parkNanos(this, STILL_THERE_NANOS);
            }
        }
    }

    /** What is new together goes out together. */
    private boolean sendNews() throws IOException {
        boolean any = false;
        for (Topic topic : TOPICS) {
            byte[] event = news.remove(topic);
            if (event != null) {
                write(event);
                any = true;
            }
        }
        if (any) {
            flush();
        }
        return any;
    }
}
