package dev.lampwright.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.FrameParts;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Recording;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Parts of frames that are lost, doubled and swapped: what is shown is a frame that was sent ({@code firmware-notes/wire.md}, section 3).
 * The firmware is tested with the same vectors.
 */
class PartsOnABadLineTest {
    private static final Path VECTORS = Path.of("..", "firmware-notes", "vectors", "parts.txt");
    private static final int PIXELS = 8;
    private static final int FRAMES = 200;

    /** Small enough that a frame of eight pixels comes in four parts. */
    private static final int PACKET_BYTES = 14;

    private static final Setup SETUP = new Setup(
            PIXELS,
            "GRB",
            List.of(12_000, 12_000, 12_000),
            1000,
            0,
            60_000,
            WhenSilent.BEACON,
            List.of(10_000),
            List.of(new Setup.Dimmer(0, 100, 0)));

    @Test
    void answersTheVectorsAsTheFirmwareDoes() throws IOException {
        ControllerBench bench = ControllerBench.board();
        int said = 0;
        for (String line : Files.readAllLines(VECTORS)) {
            String[] words = line.split(" ", -1);
            if (words[0].equals("case")) {
                bench = ControllerBench.board();
            } else if (words[0].equals("say")) {
                said++;
                isAnswered(bench, words, "message " + said);
            }
        }
        assertTrue(said > 500, said + " messages");
    }

    private static void isAnswered(ControllerBench bench, String[] words, String which) {
        bench.recording.clear();
        bench.pass(10);
        bench.tellHex(words[1]);
        ControllerBench.Answer answer = bench.answer();
        assertEquals(Integer.parseInt(words[2], 16), answer.type().code(), which);
        assertEquals(Integer.parseInt(words[3], 16), answer.sequence(), which);
        assertEquals(words[4], answer.body(), which);
        assertEquals(words[5], strip(bench.recording), which);
    }

    private static String strip(Recording recording) {
        StringBuilder hex = new StringBuilder();
        recording.entries().forEach(entry -> entry.strip().forEach(value -> hex.append(String.format("%02x", value))));
        return hex.isEmpty() ? "-" : hex.toString();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void neverShowsAFrameThatWasNotSent(int credits) {
        Random random = new Random(credits);
        int shown = 0;
        for (int round = 0; round < 50; round++) {
            shown += showsOnlyWhatWasSent(random, credits);
        }
        assertTrue(shown > 500, shown + " frames got through");
    }

    private static int showsOnlyWhatWasSent(Random random, int credits) {
        ControllerBench bench = new ControllerBench(new Here(1, "1.0.0", 0, 300, 1024, 6, credits, 10_000, true));
        bench.setUp(SETUP);
        Set<List<Integer>> sent = new HashSet<>();
        for (byte[] message : troubled(random, messages(random, sent), credits)) {
            bench.tell(message, message.length);
        }
        List<Recording.Entry> entries = bench.recording.entries();
        entries.forEach(entry -> assertTrue(sent.contains(lights(entry)), () -> "never sent: " + entry));
        return entries.size();
    }

    private static List<Integer> lights(Recording.Entry entry) {
        List<Integer> lights = new ArrayList<>(entry.duties());
        lights.addAll(entry.strip());
        return lights;
    }

    /** Messages from the host's own code for parts, for frames that differ in every byte. */
    private static List<byte[]> messages(Random random, Set<List<Integer>> sent) {
        FrameParts parts = new FrameParts(SETUP.stripBytes(), 1, PACKET_BYTES);
        List<byte[]> messages = new ArrayList<>();
        int sequence = random.nextInt(256);
        for (int number = 1; number <= FRAMES; number++) {
            Frame frame = new Frame(SETUP.stripBytes(), 1);
            Arrays.fill(frame.strip(), (byte) number);
            frame.duties()[0] = number;
            sent.add(Collections.nCopies(SETUP.stripBytes() + 1, number));
            parts.begin(frame);
            while (!parts.done()) {
                messages.add(Arrays.copyOf(parts.wire(), parts.next(sequence++)));
            }
        }
        return messages;
    }

    /** The same as it arrives: some lost, some doubled, some swapped with one that was unanswered at the same time. */
    private static List<byte[]> troubled(Random random, List<byte[]> sent, int credits) {
        List<byte[]> came = new ArrayList<>();
        for (byte[] message : sent) {
            int copies = random.nextInt(5) == 0 ? 0 : 1 + random.nextInt(10) / 9;
            came.addAll(Collections.nCopies(copies, message));
        }
        for (int at = 0; at < came.size(); at++) {
            int other = Math.min(at + random.nextInt(credits), came.size() - 1);
            if (random.nextInt(6) == 0) {
                Collections.swap(came, at, other);
            }
        }
        return came;
    }
}
