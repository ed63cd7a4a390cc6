package dev.lampwright.printer;

/** Tells when a connection has stood for its first minute, in which a printer would have spoken. For one thread at a time. */
final class FirstMinute {
    private static final long MINUTE_NANOS = 60_000_000_000L;

    private boolean counting;
    private long sinceNanos;

    /**
     * Looks at the connection.
     *
     * @param connected whether it stands
     * @param nanos the monotonic time, in ns
     * @return whether it has stood, from one look to the next, for a minute or more
     */
    boolean over(boolean connected, long nanos) {
        if (connected && !counting) {
            sinceNanos = nanos;
        }
        counting = connected;
        return connected && nanos - sinceNanos >= MINUTE_NANOS;
    }
}
