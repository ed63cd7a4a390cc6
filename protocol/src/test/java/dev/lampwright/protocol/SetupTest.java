package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Offsets and ranges are those of wire.md, section 3, SETUP. */
class SetupTest {
    /** Three channels, two supplies, one dimmer on the second. */
    private static final int[] BODY = {
        0, 100, 3, 'G', 'R', 'B', 0, 0x2E, 0xE0, 0x2E, 0xE0, 0x2E, 0xE0, 0, 0, 0x03, 0xE8, 1, 0x0B, 0xB8, 2, 2, 0x0F,
        0xA0, 0x07, 0xD0, 1, 1, 0x03, 0x20, 0x19, 0x99
    };

    private static final Setup TWO_SUPPLIES = new Setup(
            100,
            "GRB",
            List.of(12_000, 12_000, 12_000),
            1000,
            1,
            3000,
            WhenSilent.BEACON,
            List.of(4000, 2000),
            List.of(new Setup.Dimmer(1, 800, 6553)));

    @Test
    void isReadByTheDocumentsOffsets() throws MalformedMessageException {
        assertEquals(TWO_SUPPLIES, read(BODY));
    }

    @ParameterizedTest
    @CsvSource({
        "2, 2",
        "2, 5",
        "3, 88",
        "3, 82",
        "6, 87",
        "14, 1",
        "17, 2",
        "18, 0xEB",
        "20, 3",
        "21, 0",
        "21, 5",
        "27, 2"
    })
    void aFieldOutOfItsRangeIsNamed(int at, String value) {
        int[] body = Bodies.with(BODY, at, Integer.decode(value));
        MalformedMessageException e = assertThrows(MalformedMessageException.class, () -> read(body));
        int field = at >= 3 && at < 7 ? 3 : at >= 7 && at < 15 ? 7 : at;
        assertEquals(field, e.at());
        assertEquals("the field at " + field + " is out of range", e.getMessage());
    }

    /** 100 to 60000 ms. */
    @Test
    void theHoldoverHasBounds() throws MalformedMessageException {
        assertEquals(100, holdover(100));
        assertEquals(60_000, holdover(60_000));
        assertThrows(MalformedMessageException.class, () -> holdover(99));
        assertThrows(MalformedMessageException.class, () -> holdover(60_001));
    }

    @Test
    void fourSuppliesAndTheLastOfThemMayBeNamed() throws MalformedMessageException {
        int[] body = IntStream.concat(Arrays.stream(BODY, 0, 26), IntStream.of(1, 0, 2, 0, 1, 3, 0x03, 0x20, 0, 0))
                .toArray();
        body[17] = 3;
        body[21] = 4;
        Setup read = read(body);
        assertEquals(3, read.stripSupply());
        assertEquals(List.of(4000, 2000, 256, 512), read.ceilingsMilliamps());
        assertEquals(3, read.dimmers().get(0).supply());
    }

    @Test
    void everyBodyCutShortIsTooShort() {
        for (int length = 0; length < BODY.length; length++) {
            int[] cut = Arrays.copyOf(BODY, length);
            assertEquals(
                    -1,
                    assertThrows(MalformedMessageException.class, () -> read(cut))
                            .at(),
                    "" + length);
        }
    }

    /** The layout's table added up: 22 bytes, two for each supply, one, five for each dimmer; one and three for each run. */
    @Test
    void bodiesHaveTheLengthOfTheLayout() {
        assertEquals(25, Setup.bodyBytes(1, 0));
        assertEquals(41, Setup.bodyBytes(4, 2));
        assertEquals(22 + 2 * 4 + 1 + 5 * 255 + 1 + 3 * 8, Setup.LARGEST_BODY);
        assertEquals(BODY.length, TWO_SUPPLIES.bodyBytes());
        assertEquals(26, Setup.dimmersAt(2));
    }

    /** wire.md, COMPLAINT, code 6: the correct length. */
    @Test
    void tellsTheLengthThatWouldBeRight() {
        assertEquals(BODY.length, Setup.rightBodyBytes(Bodies.of(MessageType.SETUP, Arrays.copyOf(BODY, 30))));
        assertEquals(27, Setup.rightBodyBytes(Bodies.of(MessageType.SETUP, Arrays.copyOf(BODY, 26))));
        assertEquals(25, Setup.rightBodyBytes(Bodies.of(MessageType.SETUP)));
    }

    @Test
    void aStripHasAsManyBytesAsPixelsTimesChannels() {
        assertEquals(3, TWO_SUPPLIES.channels());
        assertEquals(300, TWO_SUPPLIES.stripBytes());
    }

    @ParameterizedTest
    @ValueSource(strings = {"RGB", "RBG", "GRB", "GBR", "BRG", "BGR", "RGBW", "WBGR", "GRBW"})
    void aPermutationIsAnOrder(String order) {
        assertTrue(Setup.isOrder(order));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "RG", "RGG", "rgb", "RGW", "RGBX", "RGBWW", "RGBB"})
    void nothingElseIsAnOrder(String order) {
        assertFalse(Setup.isOrder(order));
    }

    private static int[] cut(int... runs) {
        return IntStream.concat(Arrays.stream(BODY), Arrays.stream(runs)).toArray();
    }

    /** 60 pixels on data line 1, and then 40 on line 0. */
    @Test
    void aStripMayBeCutIntoRuns() throws MalformedMessageException {
        int[] body = cut(2, 1, 0, 60, 0, 0, 40);
        Setup setup = read(body);
        assertEquals(List.of(new Setup.Run(1, 60), new Setup.Run(0, 40)), setup.runs());
        assertEquals(60, setup.longestRun());
        assertEquals(body.length, setup.bodyBytes());
        assertEquals(100, TWO_SUPPLIES.longestRun());
        assertEquals(TWO_SUPPLIES, Setup.readUncut(Bodies.of(MessageType.SETUP, body)));
        assertEquals(TWO_SUPPLIES, read(cut(0)), "0 runs are as none");
        MessageWriter writer = new MessageWriter(Setup.LARGEST_BODY);
        byte[] wire = Recorder.wire(writer, setup.write(writer, MessageType.SETUP, 9));
        Recorder.Copy written = Recorder.of(wire).messages.get(0);
        byte[] bytes = new byte[body.length];
        for (int at = 0; at < bytes.length; at++) {
            bytes[at] = (byte) body[at];
        }
        assertEquals(Recorder.Copy.of(2, 9, bytes), written);
    }

    @Test
    void eightRunsAreTheMost() throws MalformedMessageException {
        int[] eight = cut(8, 7, 0, 93, 6, 0, 1, 5, 0, 1, 4, 0, 1, 3, 0, 1, 2, 0, 1, 1, 0, 1, 0, 0, 1);
        assertEquals(8, read(eight).runs().size());
        assertRunsRefused(32, cut(9, 7, 0, 93, 6, 0, 1, 5, 0, 1, 4, 0, 1, 3, 0, 1, 2, 0, 1, 1, 0, 1, 0, 0, 1));
    }

    /** Each must have its own data line, 0 to 7, and together they must make up the strip. */
    @Test
    void runsThatAreNotTheStripAreRefused() {
        assertRunsRefused(33, cut(1, 8, 0, 100));
        assertRunsRefused(36, cut(2, 1, 0, 60, 1, 0, 40));
        assertRunsRefused(34, cut(2, 1, 0, 60, 0, 0, 39));
        assertRunsRefused(34, cut(2, 1, 0, 60, 0, 0, 41));
        assertRunsRefused(34, cut(1, 0, 0, 0));
        assertRunsRefused(-1, cut(2, 1, 0, 60, 0, 0));
    }

    private static void assertRunsRefused(int field, int[] body) {
        assertEquals(
                field,
                assertThrows(MalformedMessageException.class, () -> read(body)).at());
    }

    private static int holdover(int millis) throws MalformedMessageException {
        return read(Bodies.with(Bodies.with(BODY, 18, millis >> 8), 19, millis & 0xFF))
                .holdoverMillis();
    }

    private static Setup read(int[] body) throws MalformedMessageException {
        return Setup.read(Bodies.of(MessageType.SETUP, body));
    }
}
