package dev.lampwright.service;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The messages of sd_notify(3). If the service manager cannot be reached, that is logged once; the light does not depend on it. May be used
 * by several threads.
 */
final class Notifier implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Notifier.class);

    private final Datagrams socket;
    private boolean failing;

    /**
     * Connects to a service manager.
     *
     * @param socket its socket, closed with this
     */
    Notifier(Datagrams socket) {
        this.socket = socket;
    }

    /** The service is up, or has finished reading its configuration again. */
    void ready() {
        send("READY=1");
    }

    /** The service reads its configuration again. {@code System.nanoTime} is {@code CLOCK_MONOTONIC} in the Java runtimes for Linux. */
    void reloading() {
        send("RELOADING=1\nMONOTONIC_USEC=" + TimeUnit.NANOSECONDS.toMicros(System.nanoTime()));
    }

    /** The service is about to end. */
    void stopping() {
        send("STOPPING=1");
    }

    /** The service is not stuck. */
    void alive() {
        send("WATCHDOG=1");
    }

    /**
     * The status of the service.
     *
     * @param words one line
     */
    void status(String words) {
        send("STATUS=" + words.replace('\n', ' '));
    }

    private synchronized void send(String text) {
        try {
            socket.send(text + "\n");
            failing = false;
        } catch (IOException e) {
            if (!failing) {
                LOG.warn("cannot report the service's status to the service manager: {}", e.getMessage());
            }
            failing = true;
        }
    }

    @Override
    public synchronized void close() {
        socket.close();
    }
}
