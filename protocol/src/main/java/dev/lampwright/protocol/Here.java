package dev.lampwright.protocol;

/**
 * The controller's answer to {@code HELLO}: who it is and what it can do.
 *
 * @param version its wire version, 0 to 255
 * @param firmware its firmware's version, {@code major.minor.patch}
 * @param id its id, eight bytes; 0 if it has none
 * @param mostPixels maximum pixels with three channels, 0 to 65535
 * @param mostPacketBytes maximum packet length in bytes before COBS, 0 to 65535
 * @param dimmers number of its dimmers, 0 to 255
 * @param credits messages that may be unanswered at a time, 0 to 255
 * @param byteNanos time that the strip takes for one byte, in ns
 * @param listensWhileDriving whether it receives while it drives the strip
 * @param outputs data lines for the strip, 1 to 255
 * @param lastReset cause of its last start
 */
public record Here(
        int version,
        String firmware,
        long id,
        int mostPixels,
        int mostPacketBytes,
        int dimmers,
        int credits,
        int byteNanos,
        boolean listensWhileDriving,
        int outputs,
        LastReset lastReset) {
    private static final int FIRMWARE_AT = 1;
    private static final int ID_AT = 4;
    private static final int OUTPUTS_AT = 21;
    private static final int LAST_RESET_AT = 22;

    /** A controller that does not report the cause of its last start. */
    public Here(
            int version,
            String firmware,
            long id,
            int mostPixels,
            int mostPacketBytes,
            int dimmers,
            int credits,
            int byteNanos,
            boolean listensWhileDriving,
            int outputs) {
        this(
                version,
                firmware,
                id,
                mostPixels,
                mostPacketBytes,
                dimmers,
                credits,
                byteNanos,
                listensWhileDriving,
                outputs,
                LastReset.UNKNOWN);
    }

    /** A controller with one data line, like all that do not report a number. */
    public Here(
            int version,
            String firmware,
            long id,
            int mostPixels,
            int mostPacketBytes,
            int dimmers,
            int credits,
            int byteNanos,
            boolean listensWhileDriving) {
        this(version, firmware, id, mostPixels, mostPacketBytes, dimmers, credits, byteNanos, listensWhileDriving, 1);
    }

    /**
     * Reads the body of a {@code HERE}. For an unsupported version, only {@link #version} is reliable.
     *
     * @param message the message
     * @return its content
     * @throws MalformedMessageException if its body is too short for the supported version
     */
    public static Here read(Message message) throws MalformedMessageException {
        int version = message.u8(0);
        String firmware =
                message.u8(FIRMWARE_AT) + "." + message.u8(FIRMWARE_AT + 1) + "." + message.u8(FIRMWARE_AT + 2);
        long id = 0;
        for (int i = 0; i < Long.BYTES; i++) {
            id = id << 8 | message.u8(ID_AT + i);
        }
        return new Here(
                version,
                firmware,
                id,
                message.u16(12),
                message.u16(14),
                message.u8(16),
                message.u8(17),
                message.u16(18),
                (message.u8(20) & 1) != 0,
                message.u8Or(OUTPUTS_AT, 1),
                LastReset.of(message.u8Or(LAST_RESET_AT, LastReset.UNKNOWN.code())));
    }

    /**
     * Writes this as a {@code HERE}.
     *
     * @param writer where to write
     * @param sequence sequence number of the message answered, or 0
     * @return bytes of the writer's wire
     */
    public int write(MessageWriter writer, int sequence) {
        writer.begin(MessageType.HERE, sequence).u8(version);
        for (String part : firmware.split("\\.", -1)) {
            writer.u8(Integer.parseInt(part));
        }
        for (int shift = 56; shift >= 0; shift -= 8) {
            writer.u8((int) (id >>> shift));
        }
        writer.u16(mostPixels).u16(mostPacketBytes).u8(dimmers).u8(credits).u16(byteNanos);
        writer.u8(listensWhileDriving ? 1 : 0);
        boolean tellsReset = lastReset != LastReset.UNKNOWN;
        if (outputs > 1 || tellsReset) {
            writer.u8(outputs);
        }
        if (tellsReset) {
            writer.u8(lastReset.code());
        }
        return writer.finish();
    }
}
