package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The worked examples of {@code firmware-notes/wire.md}, section 6, as printed there: somebody will test against those bytes. */
class WorkedExamplesTest {
    private static final Path PAGE = Path.of("..", "firmware-notes", "wire.md");
    private static final Pattern ROW = Pattern.compile(
            "^\\| (?:host|controller) \\| .* \\| `([0-9a-f ]+)` \\+ `([0-9a-f]{4})` \\| `([0-9a-f ]+)` \\|$");

    /** A row of the table, in hexadecimal digits: the packet without its checksum, the checksum, and the bytes on the line. */
    record Example(String packetHex, String checksumHex, String wireHex) {
        static Example of(MatchResult row) {
            return new Example(digits(row.group(1)), digits(row.group(2)), digits(row.group(3)));
        }

        private static String digits(String hex) {
            return hex.replace(" ", "");
        }

        byte[] packet() {
            return Vectors.HEX.parseHex(packetHex);
        }

        byte[] checksum() {
            return Vectors.HEX.parseHex(checksumHex);
        }

        byte[] wire() {
            return Vectors.HEX.parseHex(wireHex);
        }

        @Override
        public String toString() {
            return packetHex.substring(0, 4);
        }
    }

    static Stream<Example> examples() {
        try {
            return Files.readAllLines(PAGE).stream()
                    .flatMap(line -> ROW.matcher(line).results())
                    .map(Example::of)
                    .toList()
                    .stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void everyRowIsRead() throws IOException {
        long rows = Files.readAllLines(PAGE).stream()
                .filter(line -> line.startsWith("| host |") || line.startsWith("| controller |"))
                .filter(line -> line.contains("` + `"))
                .count();
        assertEquals(rows, examples().count());
        assertTrue(rows >= 6, rows + " rows");
    }

    @ParameterizedTest
    @MethodSource("examples")
    void readsAsThePacketBesideIt(Example example) {
        byte[] packet = example.packet();
        Recorder.Copy said =
                Recorder.Copy.of(packet[0] & 0xFF, packet[1] & 0xFF, Arrays.copyOfRange(packet, 2, packet.length));
        assertEquals(List.of(said), Recorder.of(example.wire()).messages);
        int checksum = Crc16.of(packet, 0, packet.length);
        assertArrayEquals(new byte[] {(byte) checksum, (byte) (checksum >> 8)}, example.checksum());
    }

    /** "Every line is in vectors/packets.txt too." */
    @ParameterizedTest
    @MethodSource("examples")
    void isAmongTheVectors(Example example) {
        String wire = example.wireHex();
        assertTrue(Vectors.good().anyMatch(vector -> vector.wireHex().equals(wire)), wire);
    }
}
