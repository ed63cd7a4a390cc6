package dev.lampwright.tool.plan;

import dev.lampwright.board.BoardKind;
import dev.lampwright.protocol.Setup;

/**
 * How many frames per second the line and the strip allow, by the wire format of {@code firmware-notes/wire.md}: for a controller of one
 * credit that does not listen while it drives the strip, or for one that does.
 *
 * @param lineSeconds time of a frame and its answer on the line, in s
 * @param stripSeconds time that the strip takes for a frame, in s
 * @param listens whether the controller listens while it drives the strip
 */
record FrameRate(double lineSeconds, double stripSeconds, boolean listens) {
    /** Start bit, eight data bits, stop bit. */
    private static final double BITS_PER_BYTE = 10;
    /** WS2812B datasheet: 1.25 µs per bit. */
    static final double STRIP_BYTE_S = 10e-6;
    /** WS2812B datasheet: over 280 µs of rest before the next frame, in later issues. */
    static final double STRIP_REST_S = 280e-6;
    /** Type, sequence and checksum. */
    private static final int PACKET_BYTES = 4;
    /** Offset and flags. */
    private static final int FRAME_HEAD = 3;

    private static final int DIMMER_BYTES = 2;
    /** Body of the answer: state and three counters. */
    private static final int ANSWER_BODY = 7;
    /** COBS adds a byte for each 254 and the first; a zero ends the packet. */
    private static final int COBS_RUN = 254;

    /** USB 2.0, table 5-9: 19 transactions of 64 bytes in a frame of 1 ms of full speed are the most. */
    private static final double USB_BYTES_A_SECOND = 19 * 64 * 1000;

    /**
     * Calculates for a rig.
     *
     * @param rig the rig
     * @return the times
     */
    static FrameRate of(PlannedLights rig) {
        return of(rig.setup(), rig.baud(), rig.wiring().board().kind() == BoardKind.RP2040);
    }

    /**
     * Calculates for a set-up.
     *
     * @param setup what is fitted
     * @param baud bits a second; 0 over USB
     * @param listens whether the controller listens while it drives the strip
     * @return the times
     */
    static FrameRate of(Setup setup, int baud, boolean listens) {
        int frame = onTheLine(FRAME_HEAD + DIMMER_BYTES * setup.dimmers().size() + setup.stripBytes());
        double bytesASecond = baud == 0 ? USB_BYTES_A_SECOND : baud / BITS_PER_BYTE;
        double lineSeconds = (frame + onTheLine(ANSWER_BODY)) / bytesASecond;
        double stripSeconds = setup.longestRun() * setup.channels() * STRIP_BYTE_S;
        return new FrameRate(lineSeconds, stripSeconds, listens);
    }

    /**
     * Frames a second. The strip rests while the next frame arrives; a controller that listens receives it while it drives the previous
     * one.
     *
     * @return the most
     */
    double most() {
        return listens
                ? 1 / Math.max(lineSeconds, stripSeconds + STRIP_REST_S)
                : 1 / (stripSeconds + Math.max(lineSeconds, STRIP_REST_S));
    }

    private static int onTheLine(int body) {
        int packet = PACKET_BYTES + body;
        return packet + 1 + packet / COBS_RUN + 1;
    }
}
