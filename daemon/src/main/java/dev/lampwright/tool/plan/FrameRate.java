package dev.lampwright.tool.plan;

import dev.lampwright.protocol.Setup;

/**
 * How many frames a second the line and the strip allow, by the wire format of {@code firmware-notes/wire.md}, for a controller of
 * one credit that does not listen while it drives the strip.
 *
 * @param lineSeconds time of a frame and its answer on the line, in s
 * @param stripSeconds time that the strip takes for a frame, in s
 */
record FrameRate(double lineSeconds, double stripSeconds) {
    /** Start bit, eight data bits, stop bit. */
    private static final double BITS_PER_BYTE = 10;
    /** WS2812B datasheet: 1.25 µs a bit. */
    private static final double STRIP_BYTE_S = 10e-6;
    /** WS2812B datasheet: over 280 µs of rest before the next frame, in later issues. */
    private static final double STRIP_REST_S = 280e-6;
    /** Type, sequence and checksum. */
    private static final int PACKET_BYTES = 4;
    /** Offset and flags. */
    private static final int FRAME_HEAD = 3;

    private static final int DIMMER_BYTES = 2;
    /** Body of the answer: state and three counters. */
    private static final int ANSWER_BODY = 7;
    /** COBS adds a byte for each 254 and the first; a zero ends the packet. */
    private static final int COBS_RUN = 254;

    /**
     * Reckons for a rig.
     *
     * @param setup what is fitted
     * @param baud bits a second
     * @return the times
     */
    static FrameRate of(Setup setup, int baud) {
        int frame = onTheLine(FRAME_HEAD + DIMMER_BYTES * setup.dimmers().size() + setup.stripBytes());
        double lineSeconds = (frame + onTheLine(ANSWER_BODY)) * BITS_PER_BYTE / baud;
        return new FrameRate(lineSeconds, setup.stripBytes() * STRIP_BYTE_S);
    }

    /**
     * Frames a second, one after the other. The strip rests while the next frame comes in.
     *
     * @return the most
     */
    double most() {
        return 1 / (stripSeconds + Math.max(lineSeconds, STRIP_REST_S));
    }

    private static int onTheLine(int body) {
        int packet = PACKET_BYTES + body;
        return packet + 1 + packet / COBS_RUN + 1;
    }
}
