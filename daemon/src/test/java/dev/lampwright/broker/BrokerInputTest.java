package dev.lampwright.broker;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.net.ProtocolException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class BrokerInputTest {
    private static byte[] packet(int type, int bodySize, int... length) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        bytes.write(type);
        for (int part : length) {
            bytes.write(part);
        }
        for (int i = 0; i < bodySize; i++) {
            bytes.write(i);
        }
        return bytes.toByteArray();
    }

    private static BrokerInput input(int most, byte[]... packets) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] packet : packets) {
            all.write(packet);
        }
        return new BrokerInput(new ByteArrayInputStream(all.toByteArray()), most);
    }

    /** Lengths at the limits of MQTT 3.1.1, table 2.4: 127 and 128, 16383 and 16384, 2097151 and 2097152. */
    @ParameterizedTest
    @CsvSource({
        "0, 0x00, -1, -1, -1",
        "127, 0x7F, -1, -1, -1",
        "128, 0x80, 0x01, -1, -1",
        "16383, 0xFF, 0x7F, -1, -1",
        "16384, 0x80, 0x80, 0x01, -1",
        "2097151, 0xFF, 0xFF, 0x7F, -1",
        "2097152, 0x80, 0x80, 0x80, 0x01",
    })
    void passesPacketsOn(int size, int a, int b, int c, int d) throws IOException {
        int[] length = IntStream.of(a, b, c, d).filter(part -> part >= 0).toArray();
        byte[] packet = packet(0x90, size, length);
        byte[] next = packet(0xD0, 0, 0);
        try (BrokerInput input = input(1 << 28, packet, next)) {
            assertArrayEquals(packet, input.readNBytes(packet.length));
            assertArrayEquals(next, input.readAllBytes());
        }
    }

    @Test
    void cutsALongPacketAndIsInStepAtTheNext() throws IOException {
        byte[] tooLong = packet(0x90, 16_384, 0x80, 0x80, 0x01);
        byte[] cut = packet(0x90, 300, 0xAC, 0x02);
        byte[] next = packet(0xD0, 0, 0);
        try (BrokerInput input = input(300, tooLong, next)) {
            assertArrayEquals(cut, input.readNBytes(cut.length));
            assertEquals(0xD0, input.read());
            assertEquals(0, input.read());
            assertEquals(-1, input.read());
        }
    }

    @Test
    void endsWhereTheStreamEnds() throws IOException {
        try (BrokerInput input = input(300, new byte[] {0x30, 5, 1, 2})) {
            assertArrayEquals(new byte[] {0x30, 5, 1, 2}, input.readAllBytes());
        }
        try (BrokerInput input = input(300, new byte[] {0x30})) {
            assertThrows(EOFException.class, input::read);
        }
    }

    @Test
    void refusesALengthThatDoesNotEnd() throws IOException {
        try (BrokerInput input = input(300, new byte[] {0x30, -1, -1, -1, -1, 1})) {
            assertThrows(IOException.class, input::read);
        }
    }

    @Test
    void writesATopicInCharactersThatTheLibraryTakes() throws IOException {
        byte[] topic = "a/🔥".getBytes(UTF_8);
        byte[] written = PahoText.of("a/🔥").getBytes(UTF_8);
        byte[] packet = message(0x32, topic, new byte[] {0, 9, 'x'});
        byte[] next = message(0x30, new byte[] {'b'}, new byte[] {'y'});
        try (BrokerInput input = input(300, packet, next)) {
            byte[] expected = message(0x32, written, new byte[] {0, 9, 'x'});
            assertArrayEquals(expected, input.readNBytes(expected.length));
            assertArrayEquals(next, input.readAllBytes());
        }
    }

    @Test
    void cutsAMessageBehindItsTopic() throws IOException {
        byte[] topic = "a/🔥".getBytes(UTF_8);
        byte[] packet = message(0x30, topic, new byte[100]);
        byte[] next = packet(0xD0, 0, 0);
        try (BrokerInput input = input(20, packet, next)) {
            byte[] expected = message(0x30, PahoText.of("a/🔥").getBytes(UTF_8), new byte[20 - 2 - topic.length]);
            assertArrayEquals(expected, input.readNBytes(expected.length));
            assertArrayEquals(next, input.readAllBytes());
        }
    }

    @Test
    void passesOnAMessageThatIsTooShortForItsTopic() throws IOException {
        byte[] packet = {0x30, 3, 0, 9, 'a', (byte) 0xD0, 0};
        try (BrokerInput input = input(300, packet)) {
            assertArrayEquals(packet, input.readAllBytes());
        }
    }

    /** MQTT 3.1.1, section 3.8.4: a broker never sends a message at a higher QoS than it granted. */
    @Test
    void refusesQosTwoWhichNobodySubscribesTo() throws IOException {
        try (BrokerInput input = input(300, message(0x34, new byte[] {'a'}, new byte[] {0, 1, 'x'}))) {
            assertTrue(assertThrows(ProtocolException.class, input::read)
                    .getMessage()
                    .contains("QoS 2"));
        }
    }

    private static byte[] message(int type, byte[] topic, byte[] rest) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        bytes.write(type);
        bytes.write(2 + topic.length + rest.length);
        bytes.write(0);
        bytes.write(topic.length);
        bytes.writeBytes(topic);
        bytes.writeBytes(rest);
        return bytes.toByteArray();
    }
}
