package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The ceiling as the controller's firmware calculates it: {@code firmware-notes/vectors/clamp.txt}, made from {@code wire.md} with exact
 * fractions, is also what the firmware's clamp is tested with.
 */
class ClampVectorsTest {
    private static final Path FILE = Path.of("..", "firmware-notes", "vectors", "clamp.txt");

    @Test
    void theHostReckonsAsTheControllerDoes() throws IOException {
        List<String> lines = Files.readAllLines(FILE).stream()
                .filter(line -> line.startsWith("clamp "))
                .toList();
        assertTrue(lines.size() >= 300);
        for (String line : lines) {
            String[] words = line.split(" ", -1);
            Setup setup = setup(bytes(words[1]));
            Frame frame = frame(words[2], words[3]);
            assertEquals(words[6].equals("over"), clamp(setup, frame), line);
            Frame shown = frame(words[4], words[5]);
            assertArrayEquals(shown.strip(), frame.strip(), line);
            assertArrayEquals(shown.duties(), frame.duties(), line);
        }
    }

    private static boolean clamp(Setup setup, Frame frame) {
        SupplyDraw draw = new SupplyDraw(setup);
        boolean over = false;
        for (int supply = 0; supply < draw.supplies(); supply++) {
            long factor = draw.factor(supply, draw.load(supply, frame));
            draw.dim(supply, factor, frame);
            over |= factor < SupplyDraw.WHOLE;
        }
        return over;
    }

    /** Set-ups are read from the wire, so one is put there first. */
    private static Setup setup(byte[] body) {
        MessageWriter writer = new MessageWriter(Setup.LARGEST_BODY);
        writer.begin(MessageType.SETUP, 1);
        for (byte value : body) {
            writer.u8(value & 0xFF);
        }
        int length = writer.finish();
        List<Setup> read = new ArrayList<>();
        new MessageReader(2048).accept(writer.wire(), 0, length, new MessageReader.Handler() {
            @Override
            public void message(Message message) {
                read.add(assertDoesNotThrow(() -> Setup.read(message)));
            }

            @Override
            public void broken(int bytes) {}
        });
        return read.get(0);
    }

    private static Frame frame(String strip, String duties) {
        byte[] stripBytes = bytes(strip);
        byte[] dutyBytes = bytes(duties);
        Frame frame = new Frame(stripBytes.length, dutyBytes.length / 2);
        System.arraycopy(stripBytes, 0, frame.strip(), 0, stripBytes.length);
        for (int i = 0; i < frame.duties().length; i++) {
            frame.duties()[i] = ((dutyBytes[2 * i] & 0xFF) << 8) | (dutyBytes[2 * i + 1] & 0xFF);
        }
        return frame;
    }

    private static byte[] bytes(String hex) {
        return hex.equals("-") ? new byte[0] : Vectors.HEX.parseHex(hex);
    }
}
