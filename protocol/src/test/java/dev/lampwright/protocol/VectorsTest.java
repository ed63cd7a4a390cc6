package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class VectorsTest {
    @Test
    void thereAreSome() {
        assertTrue(Vectors.all().count() > 80);
    }

    @ParameterizedTest
    @MethodSource("dev.lampwright.protocol.Vectors#all")
    void areReadAsTheySay(Vectors.Vector vector) {
        Recorder heard = Recorder.of(vector.wire());
        assertEquals(vector.messages(), heard.messages);
        assertEquals(vector.messages().isEmpty() ? 1 : 0, heard.broken.size());
    }

    @ParameterizedTest
    @MethodSource("dev.lampwright.protocol.Vectors#good")
    void areWrittenAsTheyStand(Vectors.Vector vector) {
        Recorder.Copy message = vector.messages().get(0);
        byte[] body = Vectors.HEX.parseHex(message.body());
        byte[] plain = new byte[body.length + MessageWriter.OVERHEAD];
        plain[0] = (byte) message.type();
        plain[1] = (byte) message.sequence();
        System.arraycopy(body, 0, plain, 2, body.length);
        int crc = Crc16.of(plain, 0, body.length + 2);
        plain[body.length + 2] = (byte) crc;
        plain[body.length + 3] = (byte) (crc >> 8);
        byte[] wire = new byte[Cobs.encodedLimit(plain.length) + 1];
        int end = Cobs.encode(plain, plain.length, wire, 0);
        assertArrayEquals(vector.wire(), Arrays.copyOf(wire, end + 1));
    }

    @Test
    void theMessagesOfAHandshakeAreWrittenAsTheyStand() throws MalformedMessageException {
        MessageWriter writer = new MessageWriter(Setup.LARGEST_BODY);
        int hello = writer.begin(MessageType.HELLO, 1).u8(Message.WIRE_VERSION).finish();
        assertWritten("hello", writer, hello);
        Here here = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false);
        assertWritten("here", writer, here.write(writer, 1));
        assertWritten("setup_small", writer, small().write(writer, MessageType.SETUP, 2));
        assertWritten("in_force_small", writer, small().write(writer, MessageType.IN_FORCE, 2));
        assertWritten("setup_two_supplies", writer, rig().write(writer, MessageType.SETUP, 3));
        assertWritten("setup_two_runs", writer, cut().write(writer, MessageType.SETUP, 3));
        Here wide = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false, 8);
        assertWritten("here_eight_lines", writer, wide.write(writer, 1));
        Here hung = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false, 1, LastReset.WATCHDOG);
        assertWritten("here_after_the_watchdog", writer, hung.write(writer, 1));
        assertWritten("shown", writer, Shown.WHOLE.write(writer, 4, 0, 0, 0));
        assertWritten("shown_dimmed", writer, Shown.DIMMED.write(writer, 5, 3, 1, 65_535));
        assertWritten("complaint_broken", writer, Complaint.BROKEN.write(writer, 7, 12));
        assertWritten("complaint_version", writer, Complaint.VERSION.write(writer, 1, 1));
    }

    @Test
    void theMessagesOfAHandshakeAreUnderstood() {
        assertUnderstood(
                "here",
                message -> assertEquals(
                        new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 1, 10_000, false), Here.read(message)));
        assertUnderstood(
                "here_eight_lines",
                message -> assertEquals(8, Here.read(message).outputs()));
        assertUnderstood(
                "here_after_the_watchdog",
                message -> assertEquals(LastReset.WATCHDOG, Here.read(message).lastReset()));
        assertUnderstood("setup_two_runs", message -> {
            assertEquals(cut(), Setup.read(message));
            assertEquals(20, Setup.read(message).longestRun());
        });
        assertUnderstood("setup_small", message -> assertEquals(small(), Setup.read(message)));
        assertUnderstood("setup_two_supplies", message -> assertEquals(rig(), Setup.read(message)));
        assertUnderstood("shown_dimmed", message -> {
            assertEquals(Shown.DIMMED, Shown.read(message));
            assertEquals(3, message.u16(Shown.BROKEN_AT));
            assertEquals(1, message.u16(Shown.OVERRUNS_AT));
            assertEquals(65_535, message.u16(Shown.DIMMED_AT));
        });
        assertUnderstood("complaint_version", message -> {
            assertEquals(Complaint.VERSION, Complaint.of(message.u8(0)));
            assertEquals(1, message.u16(1));
        });
    }

    @Test
    void framesAreWrittenAsTheyStand() {
        Frame two = new Frame(6, 0);
        System.arraycopy(new byte[] {0, (byte) 255, 0, 16, 32, 64}, 0, two.strip(), 0, 6);
        FrameParts whole = new FrameParts(6, 0, 1024);
        whole.begin(two);
        assertArrayEquals(Vectors.named("frame_two_pixels").wire(), part(whole, 4));

        Frame dimmers = new Frame(0, 2);
        dimmers.duties()[0] = 65_535;
        FrameParts only = new FrameParts(0, 2, 1024);
        only.begin(dimmers);
        assertArrayEquals(Vectors.named("frame_dimmers_only").wire(), part(only, 5));
    }

    @Test
    void aLongFrameIsCutIntoPartsAsTheyStand() {
        Frame frame = new Frame(12, 2);
        for (int i = 0; i < 12; i++) {
            frame.strip()[i] = (byte) (i + 1);
        }
        frame.duties()[0] = 32_768;
        frame.duties()[1] = 1;
        FrameParts parts = new FrameParts(12, 2, 20);
        parts.begin(frame);
        assertArrayEquals(Vectors.named("frame_first_part").wire(), part(parts, 6));
        assertFalse(parts.done());
        assertArrayEquals(Vectors.named("frame_last_part").wire(), part(parts, 7));
        assertTrue(parts.done());
    }

    private interface Check {
        void on(Message message) throws MalformedMessageException;
    }

    private static void assertUnderstood(String name, Check check) {
        byte[] wire = Vectors.named(name).wire();
        new MessageReader(2048).accept(wire, 0, wire.length, new MessageReader.Handler() {
            @Override
            public void message(Message message) {
                try {
                    check.on(message);
                } catch (MalformedMessageException e) {
                    throw new AssertionError(name, e);
                }
            }

            @Override
            public void broken(int bytes) {
                throw new AssertionError(name + " is broken");
            }
        });
    }

    private static void assertWritten(String name, MessageWriter writer, int length) {
        assertArrayEquals(Vectors.named(name).wire(), Recorder.wire(writer, length), name);
    }

    private static byte[] part(FrameParts parts, int sequence) {
        int length = parts.next(sequence);
        return Arrays.copyOf(parts.wire(), length);
    }

    private static Setup small() {
        List<Integer> currents = List.of(12_000, 12_000, 12_000);
        return new Setup(2, "GRB", currents, 1000, 0, 3000, WhenSilent.BEACON, List.of(1500), List.of());
    }

    private static Setup cut() {
        List<Integer> currents = List.of(12_000, 12_000, 12_000);
        List<Setup.Dimmer> dimmers = List.of(new Setup.Dimmer(0, 800, 0));
        List<Setup.Run> runs = List.of(new Setup.Run(1, 20), new Setup.Run(0, 10));
        return new Setup(30, "GRB", currents, 1000, 0, 3000, WhenSilent.BEACON, List.of(1500), dimmers, runs);
    }

    private static Setup rig() {
        List<Integer> currents = List.of(12_000, 12_000, 12_000, 18_000);
        List<Setup.Dimmer> dimmers = List.of(new Setup.Dimmer(1, 800, 0), new Setup.Dimmer(1, 400, 6553));
        return new Setup(300, "GRBW", currents, 1000, 0, 3000, WhenSilent.BEACON, List.of(4000, 2000), dimmers);
    }
}
