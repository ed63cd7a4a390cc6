package dev.lampwright.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Bytes for an HTTP server on loopback, and what comes back within a while. */
final class RawRequest {
    private static final int MOST_ANSWER = 1 << 16;
    private static final int REST_MILLIS = 150;
    private static final Pattern STATUS = Pattern.compile("HTTP/1\\.[01] (\\d{3})( .*)?\r\n");

    private RawRequest() {}

    /**
     * What a server answers.
     *
     * @param port its port
     * @param request everything that is sent
     * @param millis how long to wait for the first byte of the answer
     * @return what has come, possibly nothing; 64 KiB at most
     */
    static String answer(int port, byte[] request, int millis) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setTcpNoDelay(true);
            socket.setSoTimeout(millis);
            ByteArrayOutputStream heard = new ByteArrayOutputStream();
            try {
                socket.getOutputStream().write(request);
                InputStream in = socket.getInputStream();
                byte[] piece = new byte[4096];
                for (int count = in.read(piece); count >= 0 && heard.size() < MOST_ANSWER; count = in.read(piece)) {
                    heard.write(piece, 0, count);
                    socket.setSoTimeout(REST_MILLIS);
                }
            } catch (SocketTimeoutException e) {
                // That was all for now.
            } catch (IOException e) {
                // It hung up on an invalid request.
            }
            return heard.toString(StandardCharsets.ISO_8859_1);
        }
    }

    /** The status of an answer; 0 if it has none. */
    static int status(String answer) {
        Matcher matcher = STATUS.matcher(answer);
        return matcher.lookingAt() ? Integer.parseInt(matcher.group(1)) : 0;
    }
}
