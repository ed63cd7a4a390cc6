package dev.lampwright.link;

/**
 * A line of bytes to a controller: a serial port, or one that lives in memory. Used by one thread, but for {@link #close}, which
 * any thread may call, also while another is inside a method.
 */
public interface Line {
    /**
     * Opens the line, or opens it again after {@link #close}.
     *
     * @throws LineException if it cannot be opened; the text says what, which port, and what to do
     */
    void open() throws LineException;

    /**
     * Reads what has come.
     *
     * @param into where to put it, from index 0
     * @param timeoutMillis how long to wait for the first byte; 0 does not wait
     * @return bytes read, 0 if none came in time
     * @throws LineException if the line is gone
     */
    int read(byte[] into, int timeoutMillis) throws LineException;

    /**
     * Writes bytes, all of them.
     *
     * @param bytes where they stand
     * @param count how many, from index 0
     * @throws LineException if the line is gone, or does not take them in a second
     */
    void write(byte[] bytes, int count) throws LineException;

    /** Closes the line. It neither throws nor blocks for more than a second, whatever the device does. */
    void close();

    /**
     * How many bits the line passes in a second, with start and stop bits.
     *
     * @return baud
     */
    int baud();

    /**
     * The name of the line, for the log.
     *
     * @return for instance {@code /dev/ttyACM0}
     */
    String name();
}
