package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Complaint;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.MessageWriter;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.Shown;
import dev.lampwright.protocol.WhenSilent;
import java.io.ByteArrayOutputStream;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HexFormat;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What is sent and received, message by message, on a clock that stands still. Sequence numbers, credit and the meaning of answers are
 * those of {@code firmware-notes/wire.md}, section 2.
 */
class ExchangeTest {
    /** 10 bits per byte at 100000 baud (8 data bits, a start and a stop bit): 100 µs. */
    private static final int BAUD = 100_000;

    private static final long BYTE_NANOS = 100_000;
    /** Our own margins: an answer of 32 bytes, and 50 ms. */
    private static final long ANSWER_NANOS = 32 * BYTE_NANOS + 50_000_000;

    private final AtomicLong now = new AtomicLong(1_000_000);
    private final Tally tally = new Tally();
    private final StillLine line = new StillLine();
    private final Exchange exchange = new Exchange(line, now::get, tally, new Deliveries());
    private final MessageWriter writer = new MessageWriter(Setup.LARGEST_BODY);

    /** Keeps what is written, and returns the bytes set for it. */
    private static final class StillLine implements Line {
        final ByteArrayOutputStream written = new ByteArrayOutputStream();
        final Deque<byte[]> answers = new ArrayDeque<>();
        int lastTimeout = -1;

        @Override
        public void open() {}

        @Override
        public int read(byte[] into, int timeoutMillis) {
            lastTimeout = timeoutMillis;
            byte[] answer = answers.isEmpty() ? new byte[0] : answers.remove();
            System.arraycopy(answer, 0, into, 0, answer.length);
            return answer.length;
        }

        @Override
        public void write(byte[] bytes, int count) {
            written.write(bytes, 0, count);
        }

        @Override
        public void close() {}

        @Override
        public int baud() {
            return BAUD;
        }

        @Override
        public String name() {
            return "still";
        }
    }

    @BeforeEach
    void begin() throws LineException {
        exchange.restart();
        assertEquals("00", written());
    }

    private String written() {
        String hex = HexFormat.of().formatHex(line.written.toByteArray());
        line.written.reset();
        return hex;
    }

    private void hear(int count) throws LineException {
        line.answers.add(Arrays.copyOf(writer.wire(), count));
        exchange.receive(0);
    }

    private void hearShown(int sequence) throws LineException {
        hear(Shown.WHOLE.write(writer, sequence, 0, 0, 0));
    }

    /** wire.md, section 6: HELLO with sequence 1 on the line. */
    @Test
    void saysHelloAsInTheWorkedExample() throws LineException {
        exchange.sendHello();
        assertEquals("06010101bcd800", written());
    }

    /** The time on the line in both directions, plus the margin. */
    @Test
    void anAnswerIsDueWhenItCanHaveCome() throws LineException {
        exchange.sendHello();
        int bytes = line.written.size();
        assertEquals(bytes * BYTE_NANOS + ANSWER_NANOS, exchange.nanosToDeadline());
        now.addAndGet(7);
        assertEquals(bytes * BYTE_NANOS + ANSWER_NANOS - 7, exchange.nanosToDeadline());
    }

    /** Waits also for what is still on the line or still being shown. */
    @Test
    void messagesWaitForThoseBefore() throws LineException {
        exchange.credit().restart(3);
        line.written.reset();
        exchange.sendRest(WhenSilent.DARK, 5_000_000);
        long first = line.written.size() * BYTE_NANOS;
        exchange.sendRest(WhenSilent.DARK, 5_000_000);
        assertEquals(first + 5_000_000 + ANSWER_NANOS, exchange.nanosToDeadline());
        hearShown(1);
        assertEquals(first + 10_000_000 + ANSWER_NANOS, exchange.nanosToDeadline());
    }

    @Test
    void anAnswerToASetupIsAsLongAsTheSetup() throws LineException {
        line.written.reset();
        exchange.sendSetup(LinkRig.SETUP);
        assertEquals(2L * line.written.size() * BYTE_NANOS + ANSWER_NANOS, exchange.nanosToDeadline());
        hear(LinkRig.SETUP.write(writer, MessageType.IN_FORCE, 1));
        assertEquals(Optional.of(LinkRig.SETUP), exchange.answers().inForce());
    }

    @Test
    void onlyTheLastPartOfAFrameDrivesTheStripAndCounts() throws LineException {
        exchange.credit().restart(5);
        FrameParts parts = new FrameParts(6, 0, 4 + 3 + 4);
        parts.begin(new Frame(6, 0));
        line.written.reset();
        exchange.sendPart(parts, 9_000_000, 0);
        long first = line.written.size() * BYTE_NANOS;
        assertEquals(first + ANSWER_NANOS, exchange.nanosToDeadline());
        assertEquals(0, tally.framesSent.get());
        exchange.sendPart(parts, 9_000_000, 0);
        long both = line.written.size() * BYTE_NANOS;
        hear(Shown.TAKEN.write(writer, 1, 0, 0, 0));
        assertEquals(both + 9_000_000 + ANSWER_NANOS, exchange.nanosToDeadline());
        assertEquals(1, tally.framesSent.get());
        assertEquals(0, tally.framesShown.get(), "a part that was taken is not a frame shown");
    }

    @Test
    void whatIsOverdueIsLostAndSpoilsItsFrame() throws LineException {
        exchange.sendHello();
        exchange.expire();
        assertFalse(exchange.answers().takeFrameSpoilt());
        now.addAndGet(exchange.nanosToDeadline());
        exchange.expire();
        assertEquals(1, tally.messagesLost.get());
        assertTrue(exchange.answers().takeFrameSpoilt());
        assertFalse(exchange.answers().takeFrameSpoilt(), "told once");
        assertFalse(exchange.isSilentFor(0));
        now.addAndGet(1001);
        assertTrue(exchange.isSilentFor(1000));
        assertFalse(exchange.isSilentFor(1001));
    }

    @Test
    void anAnswerTellsThatOlderOnesAreLost() throws LineException {
        exchange.credit().restart(3);
        for (int i = 0; i < 3; i++) {
            exchange.sendRest(WhenSilent.DARK, 0);
        }
        hearShown(2);
        assertEquals(1, tally.messagesLost.get());
        assertTrue(exchange.answers().takeFrameSpoilt());
        assertFalse(exchange.credit().idle());
        hearShown(3);
        assertTrue(exchange.credit().idle());
    }

    @Test
    void sequenceNumbersGoRound() throws LineException {
        for (int i = 1; i <= 300; i++) {
            exchange.sendRest(WhenSilent.DARK, 0);
            hearShown(i & 0xFF);
            assertTrue(exchange.credit().idle(), "message " + i);
        }
        assertEquals(300, tally.framesShown.get());
        assertEquals(0, tally.messagesLost.get());
    }

    /** wire.md, SHOWN: 1 shown, 2 dimmed, 3 resting, and three counters. */
    @Test
    void countsWhatTheControllerTells() throws LineException {
        exchange.sendRest(WhenSilent.DARK, 0);
        hear(Shown.DIMMED.write(writer, 1, 5, 6, 7));
        assertEquals(1, tally.framesShown.get());
        assertEquals(1, tally.framesDimmed.get());
        assertEquals(5, tally.broken());
        assertEquals(6, tally.overruns());
        assertEquals(7, tally.dimmed());
        assertTrue(exchange.answers().counted());
        exchange.sendRest(WhenSilent.DARK, 0);
        hear(Shown.RESTING.write(writer, 2, 5, 6, 7));
        assertEquals(1, tally.framesShown.get());
        assertEquals(1, tally.framesDimmed.get());
        assertEquals(11, tally.mishaps());
    }

    @Test
    void aControllerThatHasStartedIsNotReady() throws LineException {
        Here here = new Here(1, "1.0.0", 5, 300, 1024, 6, 1, 10_000, false);
        exchange.sendHello();
        hear(here.write(writer, 1));
        assertEquals(Optional.of(here), exchange.answers().here());
        assertFalse(exchange.answers().unready(), "it was asked");
        hear(here.write(writer, 77));
        assertFalse(exchange.answers().unready(), "an answer that nothing waits for");
        hear(here.write(writer, 0));
        assertTrue(exchange.answers().unready());
        exchange.answers().forget();
        assertFalse(exchange.answers().unready());
        assertEquals(Optional.empty(), exchange.answers().here());
    }

    /** wire.md, COMPLAINT: codes 1, 2 and 9 answer nothing; 5 says that the controller is not set up. */
    @Test
    void aComplaintAnswersUnlessItsCodeSaysOtherwise() throws LineException {
        exchange.sendHello();
        hear(Complaint.CEILING_BELOW_DARK.write(writer, 1, 30));
        assertTrue(exchange.answers().darkOverCeiling());
        hear(Complaint.BROKEN.write(writer, 1, 9));
        assertFalse(exchange.credit().idle());
        assertEquals(Optional.empty(), exchange.answers().refusal());
        hear(Complaint.NOT_SET_UP.write(writer, 1, 0));
        assertTrue(exchange.credit().idle());
        assertTrue(exchange.answers().unready());
        assertTrue(exchange.answers().takeFrameSpoilt());
        assertEquals(
                Optional.of("the controller refused a frame before it was set up (detail 0)"),
                exchange.answers().refusal());
        assertEquals(1, tally.refused.get());
        exchange.sendHello();
        hear(Complaint.VERSION.write(writer, 2, 9));
        assertTrue(
                exchange.answers().refusal().orElseThrow().startsWith("the controller speaks version 9 of the wire"));
    }

    @Test
    void whatMakesNoSenseIsCounted() throws LineException {
        hear(writer.begin(MessageType.SETUP, 1).finish());
        hear(writer.begin(MessageType.COMPLAINT, 1).finish());
        line.answers.add(new byte[] {5, 1, 1, 0});
        exchange.receive(0);
        assertEquals(3, tally.garbled.get());
        assertEquals(3, tally.mishaps());
    }

    /** The line waits in whole ms, never shorter than asked and never for a time in the past. */
    @Test
    void waitsInWholeMilliseconds() throws LineException {
        assertFalse(exchange.receive(1));
        assertEquals(1, line.lastTimeout);
        exchange.receive(1_000_000);
        assertEquals(1, line.lastTimeout);
        exchange.receive(1_000_001);
        assertEquals(2, line.lastTimeout);
        exchange.receive(-5_000_000);
        assertEquals(0, line.lastTimeout);
        line.answers.add(new byte[512]);
        assertTrue(exchange.receive(0), "there may be more");
        line.answers.add(new byte[511]);
        assertFalse(exchange.receive(0));
    }
}
