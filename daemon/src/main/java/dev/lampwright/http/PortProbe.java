package dev.lampwright.http;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;

/**
 * Whether a server can listen at an address. The JDK's HTTP server leaves a descriptor open each time it cannot be bound (seen in 17.0.15),
 * which adds up over repeated attempts; so it is created only after this probe has succeeded.
 */
public final class PortProbe {
    private PortProbe() {}

    /**
     * Listens there for a moment, and leaves nothing behind.
     *
     * @param where address and port; port 0 for any free one
     * @throws IOException if nothing can listen there; the message says why
     */
    public static void require(InetSocketAddress where) throws IOException {
        try (ServerSocket socket = new ServerSocket()) {
            socket.bind(where);
        }
    }
}
