package dev.lampwright.http;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;

/**
 * Whether a server can be had at a place. The JDK's HTTP server leaves a descriptor open each time it cannot be bound (seen in 17.0.15),
 * which adds up where it is tried again and again; so it is made only where this finds room.
 */
public final class PortProbe {
    private PortProbe() {}

    /**
     * Listens there for a moment, and leaves nothing behind.
     *
     * @param where address and port; port 0 for any that is free
     * @throws IOException if nothing can listen there; the text says why
     */
    public static void require(InetSocketAddress where) throws IOException {
        try (ServerSocket socket = new ServerSocket()) {
            socket.bind(where);
        }
    }
}
