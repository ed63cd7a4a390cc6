package dev.lampwright.http;

import java.util.Arrays;

/**
 * Requests that are not right HTTP. The JDK's server reads what is left of a request's body when its exchange is closed, and throws a
 * {@code RuntimeException} where the sizes of its chunks make no sense; that is the sender's fault and nothing for the log.
 */
public final class BrokenRequest {
    private static final String BODY = "sun.net.httpserver.ChunkedInputStream";

    private BrokenRequest() {}

    /**
     * Whether a failure came of a request's body.
     *
     * @param failure what was thrown while a request was answered
     * @return false if it is a failure of ours
     */
    public static boolean isCauseOf(RuntimeException failure) {
        return Arrays.stream(failure.getStackTrace())
                .anyMatch(frame -> frame.getClassName().equals(BODY));
    }

    /**
     * Closes an exchange, whatever is left of its request.
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
