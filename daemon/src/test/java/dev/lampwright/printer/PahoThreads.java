package dev.lampwright.printer;

/** The threads of all clients in this Java machine. */
final class PahoThreads {
    /** {@code printer}; and one that connects, or those that read, send and call; and those of the connection before, ending. */
    static final int MOST_FOR_ONE_CONNECTION = 8;

    private PahoThreads() {}

    static long count() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getThreadGroup() != null)
                .filter(thread -> thread.getThreadGroup().getName().equals("printer"))
                .count();
    }
}
