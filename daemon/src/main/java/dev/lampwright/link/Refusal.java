package dev.lampwright.link;

import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Message;

/**
 * A controller's refusal of a message.
 *
 * @param complaint the complaint
 * @param code the number of the complaint, which says more than {@code complaint} if this version does not know it
 * @param detail its detail, by {@code wire.md}, COMPLAINT
 */
record Refusal(Complaint complaint, int code, int detail) {
    /** What to do if nothing else helps. */
    static final String NEW_FIRMWARE = "flash the firmware of this version of lampwright";

    /** The refusal as a clause. */
    String words() {
        return switch (complaint) {
            case VERSION -> otherVersion(detail);
            case OTHER -> "the controller refused " + complaint.words() + " (code " + code + ", detail " + detail + ")";
            default -> "the controller refused " + complaint.words() + " (detail " + detail + ")";
        };
    }

    /** The words for a controller that uses another version. */
    static String otherVersion(int version) {
        return "the controller speaks version " + version + " of the wire, and lampwright version "
                + Message.WIRE_VERSION + ": flash firmware that speaks version " + Message.WIRE_VERSION;
    }
}
