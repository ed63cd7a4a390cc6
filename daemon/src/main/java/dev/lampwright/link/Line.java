package dev.lampwright.link;

/**
 * A line of bytes to a controller: a serial port, or one in memory. Used by one thread, except for {@link #close}, which any thread may
 * call, even while another is inside a method.
 */
public interface Line {
    /**
     * Opens the line, or opens it again after {@link #close}.
     *
     * @throws LineException if it cannot be opened; the message says what, which port, and what to do
     */
    void open() throws LineException;

    /**
     * Reads the bytes that have come.
     *
     * @param into where to put it, from index 0
     * @param timeoutMillis how long to wait for the first byte; 0 does not wait, and a device may round up to the next 100 ms
     * @return bytes read, 0 if none came in time
     * @throws LineException if the line is lost
     */
    int read(byte[] into, int timeoutMillis) throws LineException;

    /**
     * Writes all bytes.
     *
     * @param bytes the buffer
     * @param count how many, from index 0
     * @throws LineException if the line is lost, or does not accept them within a second
     */
    void write(byte[] bytes, int count) throws LineException;

    /** Closes the line. It neither throws nor blocks for more than half a second, whatever the device does. */
    void close();

    /**
     * Bits per second on the line, including start and stop bits.
     *
     * @return baud
     */
    int baud();

    /**
     * The name of the line, for the log.
     *
     * @return for example {@code /dev/ttyACM0}
     */
    String name();
}
