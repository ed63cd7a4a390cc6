package dev.lampwright.demo;

import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.MalformedMessageException;
import dev.lampwright.protocol.Message;

/**
 * Assembles a frame from its parts, which must come in order and without gaps. The caller must call {@link #forget} if a message between
 * two was lost. Allocates nothing for a frame.
 */
final class FrameAssembly {
    /** The result of a part. */
    enum Outcome {
        /** It was accepted, and more will follow. */
        TAKEN,
        /** It was the last: the frame is complete. */
        WHOLE,
        /** It was refused, and with it the frame. */
        REFUSED
    }

    private static final int OFFSET_AT = 0;
    private static final int FLAGS_AT = 2;
    private static final int LAST = 1;

    private final Frame frame;
    private int next;
    private Complaint complaint = Complaint.OTHER;
    private int detail;

    FrameAssembly(int stripBytes, int dimmers) {
        frame = new Frame(stripBytes, dimmers);
    }

    /** The frame, complete after {@link Outcome#WHOLE}. */
    Frame frame() {
        return frame;
    }

    /** Why the last part was refused. */
    Complaint complaint() {
        return complaint;
    }

    /** The detail of {@link #complaint}. */
    int detail() {
        return detail;
    }

    /** Discards what has been accepted of a frame. */
    void forget() {
        next = 0;
    }

    /** Accepts the part in a {@code FRAME}. */
    Outcome take(Message message) throws MalformedMessageException {
        int due = next;
        next = 0;
        if (message.bodyLength() < FrameParts.HEADER) {
            return refuse(Complaint.LENGTH, frame.strip().length - due);
        }
        int offset = message.u16(OFFSET_AT);
        int flags = message.u8(FLAGS_AT);
        if (flags > LAST) {
            return refuse(Complaint.VALUE, FLAGS_AT);
        }
        if (offset != 0 && offset != due) {
            return refuse(Complaint.PART_ORDER, due);
        }
        return takeData(message, offset, flags == LAST);
    }

    private Outcome takeData(Message message, int offset, boolean last) throws MalformedMessageException {
        int dutyBytes = offset == 0 ? 2 * frame.duties().length : 0;
        int count = message.bodyLength() - FrameParts.HEADER - dutyBytes;
        int left = frame.strip().length - offset;
        if (count < 0 || count > left || (last && count < left)) {
            return refuse(Complaint.LENGTH, left);
        }
        if (offset == 0) {
            takeDuties(message);
        }
        message.copy(FrameParts.HEADER + dutyBytes, count, frame.strip(), offset);
        next = last ? 0 : offset + count;
        return last ? Outcome.WHOLE : Outcome.TAKEN;
    }

    private void takeDuties(Message message) throws MalformedMessageException {
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = message.u16(FrameParts.HEADER + 2 * i);
        }
    }

    private Outcome refuse(Complaint why, int whyDetail) {
        complaint = why;
        detail = whyDetail;
        return Outcome.REFUSED;
    }
}
