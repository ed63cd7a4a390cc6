package dev.lampwright.broker;

/** The threads of all clients in this JVM. */
public final class PahoThreads {
    /** {@code printer}; and one that connects, or those that read, send and call; and those of the previous connection, ending. */
    public static final int MOST_FOR_ONE_CONNECTION = 8;

    private PahoThreads() {}

    public static long count() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getThreadGroup() != null)
                .filter(thread -> thread.getThreadGroup().getName().equals("printer"))
                .count();
    }
}
