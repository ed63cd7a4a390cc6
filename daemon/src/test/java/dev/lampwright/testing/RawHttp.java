package dev.lampwright.testing;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** Requests as sent on the line, right or wrong. */
public final class RawHttp {
    private static final int LONGEST_MILLIS = 10_000;

    private RawHttp() {}

    /**
     * What a server on loopback answers.
     *
     * @param port its port
     * @param request everything that is sent
     * @return everything that comes back until it closes
     */
    public static String answerTo(int port, String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(LONGEST_MILLIS);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.shutdownOutput();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }
}
