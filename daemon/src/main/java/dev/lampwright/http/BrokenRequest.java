package dev.lampwright.http;

import java.util.Arrays;

/**
 * Requests that are not valid HTTP. The JDK's server reads the rest of a request's body when its exchange is closed, and throws a
 * {@code RuntimeException} if the chunk sizes are not valid; that is the sender's fault and is not logged.
 */
public final class BrokenRequest {
    private static final String BODY = "sun.net.httpserver.ChunkedInputStream";

    private BrokenRequest() {}

    /**
     * Whether a failure was caused by a request's body.
     *
     * @param failure the exception thrown while a request was answered
     * @return false if it is our own failure
     */
    public static boolean isCauseOf(RuntimeException failure) {
        return Arrays.stream(failure.getStackTrace())
                .anyMatch(frame -> frame.getClassName().equals(BODY));
    }

    /**
     * Closes an exchange, regardless of the rest of its request.
     *
     * @param closing closes the exchange, answered or not
     */
    public static void close(Runnable closing) {
        try {
            closing.run();
        } catch (RuntimeException e) {
            if (!isCauseOf(e)) {
                throw e;
            }
        }
    }
}
