package dev.lampwright.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.MessageType;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Faults;
import dev.lampwright.testing.Recording;
import dev.lampwright.testing.Vectors;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The in-memory controller against {@code firmware-notes/wire.md} and its vectors; each check names its section. */
class MemoryControllerTest {
    /** The body of the worked example's set-up, section 6. */
    private static final String SETUP_BODY = "0002 03 47524200 2ee0 2ee0 2ee0 0000 03e8 00 0bb8 02 01 05dc 00";

    /** A frame of the worked example's two pixels: the whole of it, offset 0, last part. */
    private static final String WHITE = "0000 01 ffffff ffffff";

    @Test
    void talksAsInTheWorkedExample() {
        ControllerBench bench = new ControllerBench(MemoryController.BOARD);
        assertEquals(Vectors.wire("here_unasked"), bench.answer().wire());
        bench.tellHex(Vectors.wire("hello"));
        assertEquals(Vectors.wire("here"), bench.answer().wire());
        bench.tellHex(Vectors.wire("setup_small"));
        assertEquals(Vectors.wire("in_force_small"), bench.answer().wire());
        bench.tellHex(Vectors.wire("frame_two_pixels"));
        assertEquals(Vectors.wire("shown"), bench.answer().wire());
        assertEquals(List.of(0, 255, 0, 16, 32, 64), bench.recording.last().strip());
        assertEquals(4, bench.recording.last().sequence());
    }

    @Test
    void takesTheVectorOfTwoSuppliesAndRepeatsIt() {
        ControllerBench bench = new ControllerBench(new Here(1, "1.0.0", 0, 400, 1024, 6, 1, 10_000, false));
        bench.answers.clear();
        bench.tellHex(Vectors.wire("setup_two_supplies"));
        ControllerBench.Answer answer = bench.answer();
        assertEquals(MessageType.IN_FORCE, answer.type());
        assertEquals("012c04475242572ee02ee02ee0465003e8000bb802020fa007d00201032000000101901999", answer.body());
    }

    @Test
    void complainsOfAVersionNotSpoken() {
        ControllerBench bench = ControllerBench.board();
        bench.tell(MessageType.HELLO, 1, "02");
        assertEquals(Vectors.wire("complaint_version"), bench.answer().wire());
    }

    @Test
    void complainsOfABrokenPacketWithTheSequenceOfTheLastGoodOne() {
        ControllerBench bench = ControllerBench.board();
        bench.tell(MessageType.HELLO, 7, "01");
        bench.answer();
        bench.tellHex("111111111111111111111111 00");
        assertEquals(Vectors.wire("complaint_broken"), bench.answer().wire());
    }

    @ParameterizedTest
    @CsvSource({
        "flipped_bit",
        "checksum_started_at_zero",
        "torn_at_front",
        "torn_at_end",
        "doubled_byte",
        "block_past_the_end",
        "code_without_bytes",
        "one_byte",
        "nothing_but_a_code"
    })
    void whatIsNoMessageIsCountedAndNothingElse(String bad) {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tellHex(Vectors.wire(bad));
        assertEquals("01", bench.answer().body().substring(0, 2));
        bench.tell(MessageType.FRAME, 9, WHITE);
        assertEquals("01 0001 0000 0000".replace(" ", ""), bench.answer().body());
    }

    @Test
    void complainsOfAPacketThatIsTooLong() {
        ControllerBench bench = ControllerBench.board();
        bench.tellHex("ff".repeat(1100) + "00");
        assertEquals("020400", bench.answer().body(), "code 2, most bytes of a packet (section 3)");
        bench.tellHex(Vectors.wire("hello"));
        assertEquals(Vectors.wire("here"), bench.answer().wire());
    }

    @Test
    void complainsOfATypeItDoesNotKnow() {
        ControllerBench bench = ControllerBench.board();
        bench.tellHex(Vectors.wire("empty_body"));
        ControllerBench.Answer answer = bench.answer();
        assertEquals("03007f", answer.body());
        assertEquals(0, answer.sequence());
    }

    @Test
    void takesNoLightBeforeItIsSetUp() {
        ControllerBench bench = ControllerBench.board();
        bench.tell(MessageType.FRAME, 1, WHITE);
        assertEquals("050000", bench.answer().body());
        bench.tell(MessageType.REST, 2, "00");
        assertEquals("050000", bench.answer().body());
        assertEquals(1, bench.recording.size(), "only its own darkness at the start");
    }

    @ParameterizedTest
    @CsvSource({
        "HELLO, '', 0001",
        "REST, '', 0001",
        "SETUP, '', 0019",
        "SETUP, 000203475242, 0019",
        "SETUP, 0002 03 47524200 2ee0 2ee0 2ee0 0000 03e8 00 0bb8 02 02 05dc 05dc, 001b",
        "SETUP, 0002 03 47524200 2ee0 2ee0 2ee0 0000 03e8 00 0bb8 02 01 05dc 02 00, 0023",
        "FRAME, 0000, 0006",
        "FRAME, 0000 01 ffffff, 0006",
        "FRAME, 0000 01 ffffff ffffff ff, 0006",
        "FRAME, 0000 00 ffffff ffffff ff, 0006"
    })
    void complainsOfABodyOfTheWrongLengthAndSaysTheRightOne(MessageType type, String body, String right) {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(type, 5, body);
        assertEquals("06" + right, bench.answer().body());
        assertEquals(0, bench.recording.size());
    }

    @ParameterizedTest
    @CsvSource({
        "0, 012d, 0000",
        "2, 02, 0002",
        "2, 05, 0002",
        "3, 47474200, 0003",
        "3, 47524257, 0003",
        "13, 0001, 0007",
        "17, 01, 0011",
        "18, 0063, 0012",
        "18, ea61, 0012",
        "20, 03, 0014",
        "21, 00, 0015",
        "21, 05, 0015",
        "24, 07, 0018"
    })
    void refusesAFieldOutOfRangeAndChangesNothing(int at, String hex, String offset) {
        ControllerBench bench = ControllerBench.board().setUp();
        StringBuilder body = new StringBuilder(SETUP_BODY.replace(" ", "") + "00".repeat(40));
        body.replace(2 * at, 2 * at + hex.length(), hex);
        bench.tell(MessageType.SETUP, 5, body.toString());
        assertEquals("07" + offset, bench.answer().body());
        bench.tell(MessageType.FRAME, 6, WHITE);
        assertEquals("01", bench.answer().body().substring(0, 2), "the set-up before is still in force");
    }

    @Test
    void refusesADimmerOnASupplyThatIsNotThere() {
        ControllerBench bench = ControllerBench.board();
        bench.tell(MessageType.SETUP, 5, SETUP_BODY.replace("05dc 00", "05dc 01 01 0064 0000"));
        assertEquals("070019", bench.answer().body());
    }

    @Test
    void refusesFlagsItDoesNotKnow() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 5, "0000 02 ffffff ffffff");
        assertEquals("070002", bench.answer().body());
    }

    @Test
    void skipsWhatFollowsTheBodyItKnows() {
        ControllerBench bench = ControllerBench.board();
        bench.tell(MessageType.HELLO, 1, "01 aabbcc");
        assertEquals(MessageType.HERE, bench.answer().type());
        bench.tell(MessageType.SETUP, 2, SETUP_BODY + "aabbcc");
        assertEquals(SETUP_BODY.replace(" ", ""), bench.answer().body());
    }

    @Test
    void showsPartsAtOnceWithTheLast() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, "0000 00 010203");
        assertEquals("00", bench.answer().body().substring(0, 2), "a part was taken");
        bench.tell(MessageType.FRAME, 2, "0003 00 0405");
        assertEquals("00", bench.answer().body().substring(0, 2));
        assertEquals(0, bench.recording.size());
        bench.tell(MessageType.FRAME, 3, "0005 01 06");
        assertEquals("01", bench.answer().body().substring(0, 2));
        assertEquals(List.of(1, 2, 3, 4, 5, 6), bench.recording.last().strip());
        assertEquals(1, bench.recording.size());
    }

    @Test
    void refusesAPartOutOfOrderAndAllThatFollowUntilAFirstOne() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, "0000 00 0102");
        bench.answer();
        bench.tell(MessageType.FRAME, 2, "0003 00 04");
        assertEquals("080002", bench.answer().body(), "2 would have been right");
        bench.tell(MessageType.FRAME, 3, "0002 01 03040506");
        assertEquals("080000", bench.answer().body());
        bench.tell(MessageType.FRAME, 4, "0004 01 0506");
        assertEquals("080000", bench.answer().body());
        assertEquals(0, bench.recording.size());
        bench.tell(MessageType.FRAME, 5, "0000 00 0102");
        assertEquals("00", bench.answer().body().substring(0, 2));
        bench.tell(MessageType.FRAME, 6, "0002 01 03040506");
        assertEquals("01", bench.answer().body().substring(0, 2));
    }

    @Test
    void refusesThePartAfterABrokenPacket() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, "0000 00 0102");
        bench.answer();
        bench.tellHex("1111 00");
        bench.answer();
        bench.tell(MessageType.FRAME, 3, "0002 01 03040506");
        assertEquals("080000", bench.answer().body());
        assertEquals(0, bench.recording.size());
    }

    /** Section 3: whatever was lost may have been the first part of another frame. */
    @Test
    void refusesThePartAfterALostMessage() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 10, "0000 00 0102");
        bench.answer();
        bench.tell(MessageType.FRAME, 13, "0002 01 03040506");
        assertEquals("080000", bench.answer().body());
        assertEquals(0, bench.recording.size());
    }

    @Test
    void refusesPartsThatEndWrong() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, "0000 00 0102");
        bench.answer();
        bench.tell(MessageType.FRAME, 2, "0002 01 0304");
        assertEquals("060004", bench.answer().body(), "four bytes were still to come");
        bench.tell(MessageType.FRAME, 1, "0000 00 0102");
        bench.answer();
        bench.tell(MessageType.FRAME, 2, "0002 00 03040506 07");
        assertEquals("060004", bench.answer().body());
        assertEquals(0, bench.recording.size());
    }

    /** Section 6, by hand: a ceiling of 50 mA turns 255 into 169. */
    @Test
    void keepsTheCeilingAsInTheWorkedExample() {
        ControllerBench bench = ControllerBench.board().setUp(ControllerBench.setup(50, WhenSilent.BEACON, List.of()));
        bench.tell(MessageType.FRAME, 1, WHITE);
        assertEquals("02 0000 0000 0001".replace(" ", ""), bench.answer().body());
        assertEquals(Collections.nCopies(6, 169), bench.recording.last().strip());
        assertEquals(Light.DIMMED, bench.recording.last().light());
    }

    /** Section 4: strip and dimmers of one supply are dimmed alike, another supply is unaffected. */
    @Test
    void dimsEachSupplyByItself() {
        Setup setup = new Setup(
                1,
                "RGB",
                List.of(10_000, 10_000, 10_000),
                0,
                0,
                3000,
                WhenSilent.DARK,
                List.of(65, 100),
                List.of(new Setup.Dimmer(0, 100, 0), new Setup.Dimmer(1, 100, 0)));
        ControllerBench bench = ControllerBench.board().setUp(setup);
        bench.tell(MessageType.FRAME, 1, "0000 01 ffff ffff ffffff");
        Recording.Entry shown = bench.recording.last();
        // 130 mA against 65 mA: half of each, rounded down.
        assertEquals(List.of(127, 127, 127), shown.strip());
        assertEquals(List.of(32767, 65535), shown.duties());
    }

    @Test
    void saysWhenTheDarkStripAloneIsOverTheCeiling() {
        ControllerBench bench = ControllerBench.board();
        bench.tell(MessageType.SETUP, 5, SETUP_BODY.replace("03e8", "07d1").replace("05dc", "0004"));
        assertEquals(MessageType.IN_FORCE, bench.answers.get(0).type());
        // 2 pixels × 2.001 mA are 4.002 mA, over 4 mA; rounded up.
        assertEquals("090005", bench.answers.get(1).body());
        assertEquals(5, bench.answers.get(1).sequence());
        bench.answers.clear();
        bench.tell(MessageType.FRAME, 6, WHITE);
        assertEquals("02", bench.answer().body().substring(0, 2));
        assertEquals(Collections.nCopies(6, 0), bench.recording.last().strip());
    }

    @Test
    void aSetupThatDiffersDarkensTheStoredFrameAndDrivesNothing() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, WHITE);
        bench.pass(1);
        bench.tell(MessageType.SETUP, 2, SETUP_BODY);
        assertEquals(255, bench.controller.shown().strip()[0] & 0xFF, "the same set-up keeps it");
        bench.tell(MessageType.SETUP, 3, SETUP_BODY.replace("0bb8", "0bb9"));
        assertEquals(0, bench.controller.shown().strip()[0]);
        assertEquals(1, bench.recording.size());
    }

    /** Section 5. Pixels 0, 8 and 16 in R 16, G 6, here in the order G, R, B; one second on, three off. */
    @Test
    void showsTheBeaconOnceTheHoldoverIsOver() {
        Setup setup = new Setup(
                17,
                "GRB",
                List.of(12_000, 12_000, 12_000),
                1000,
                0,
                3000,
                WhenSilent.BEACON,
                List.of(1500),
                List.of(new Setup.Dimmer(0, 100, 0x1234)));
        ControllerBench bench = ControllerBench.board().setUp(setup);
        bench.pass(2999);
        assertEquals(0, bench.recording.size());
        bench.pass(1);
        Recording.Entry on = bench.recording.last();
        assertEquals(Light.BEACON, on.light());
        for (int pixel = 0; pixel < 17; pixel++) {
            List<Integer> expected = pixel % 8 == 0 ? List.of(6, 16, 0) : List.of(0, 0, 0);
            assertEquals(expected, on.strip().subList(3 * pixel, 3 * pixel + 3));
        }
        assertEquals(List.of(0x1234), on.duties());
        bench.pass(4500);
        assertEquals(
                List.of(3000L, 4000L, 7000L),
                bench.recording.entries().stream()
                        .map(entry -> entry.nanos() / 1_000_000)
                        .toList());
        assertEquals(Light.DARK, bench.recording.entries().get(1).light());
        bench.pass(1);
        bench.tell(MessageType.FRAME, 9, "0000 01 0000" + "00".repeat(51));
        assertEquals(Light.WHOLE, bench.recording.last().light());
    }

    /**
     * Section 5, under the ceiling like every frame. By hand: room 1 mA = 65 535 000 grains, load (16 + 6) × 12000 × 257 = 67 848
     * 000, k = 63 301; 16 becomes 15 and 6 becomes 5.
     */
    @Test
    void theBeaconKeepsTheCeiling() {
        ControllerBench bench = ControllerBench.board().setUp(ControllerBench.setup(3, WhenSilent.BEACON, List.of()));
        bench.pass(3000);
        assertEquals(List.of(5, 15, 0, 0, 0, 0), bench.recording.last().strip());
    }

    @Test
    void afterTheHoldoverItGoesDarkOrKeepsTheFrameAsTheSetupSays() {
        ControllerBench dark = ControllerBench.board().setUp(ControllerBench.setup(1500, WhenSilent.DARK, List.of()));
        dark.tell(MessageType.FRAME, 1, WHITE);
        dark.pass(3000);
        assertEquals(Light.DARK, dark.recording.last().light());
        ControllerBench keep = ControllerBench.board().setUp(ControllerBench.setup(1500, WhenSilent.KEEP, List.of()));
        keep.tell(MessageType.FRAME, 1, WHITE);
        keep.pass(60_000);
        assertEquals(1, keep.recording.size());
    }

    @ParameterizedTest
    @CsvSource({
        "HELLO, 01, true",
        "FRAME, 0000 00 ff, false",
        "SETUP, " + SETUP_BODY + ", false",
        "FRAME, 0009 01 ff, true"
    })
    void onlyAGoodFrameOrSetupStartsTheHoldoverAnew(MessageType type, String body, boolean over) {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.pass(2000);
        bench.tell(type, 9, body);
        bench.pass(2000);
        assertEquals(over, bench.recording.size() > 0);
    }

    @Test
    void restsAsItIsTold() {
        Setup setup = ControllerBench.setup(1500, WhenSilent.BEACON, List.of(new Setup.Dimmer(0, 100, 7)));
        ControllerBench bench = ControllerBench.board().setUp(setup);
        bench.tell(MessageType.FRAME, 1, "0000 01 ffff ffffff ffffff");
        bench.pass(1);
        bench.answers.clear();
        bench.tell(MessageType.REST, 2, "01");
        assertEquals("03", bench.answer().body().substring(0, 2));
        assertEquals(1, bench.recording.size(), "1 keeps the frame and the dimmers");
        bench.tell(MessageType.REST, 3, "00");
        assertEquals(Light.DARK, bench.recording.last().light());
        assertEquals(List.of(7), bench.recording.last().duties());
        bench.pass(60_000);
        assertEquals(2, bench.recording.size(), "until the next frame, whatever the holdover");
        bench.tell(MessageType.REST, 4, "02");
        assertEquals(Light.BEACON, bench.recording.last().light());
        bench.pass(1);
        bench.answers.clear();
        bench.tell(MessageType.REST, 5, "03");
        assertEquals("070000", bench.answer().body());
    }

    /** Section 2: a controller that cannot listen while it drives answers when it listens again. */
    @Test
    void isDeafWhileItDrivesTheStrip() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, WHITE);
        long driven = 6 * 10_000 + 300_000;
        assertEquals(bench.now + driven, bench.answer().nanos());
        bench.tell(MessageType.HELLO, 2, "01");
        assertEquals(List.of(), bench.answers);
        bench.pass(1);
        bench.tell(MessageType.FRAME, 3, WHITE);
        assertEquals("01 0000 0001 0000".replace(" ", ""), bench.answer().body(), "one overrun for the packet");
    }

    /** Section 3, SHOWN: the rest of a packet is broken, even if it looks like a whole one. */
    @Test
    void breaksThePacketThatAnOverrunHit() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, WHITE);
        bench.answer();
        bench.tellHex("11");
        bench.pass(1);
        bench.tell(MessageType.FRAME, 2, WHITE);
        assertEquals("01", bench.answer().body().substring(0, 2), "a broken packet");
        bench.tell(MessageType.FRAME, 3, WHITE);
        assertEquals("01 0001 0001 0000".replace(" ", ""), bench.answer().body());
    }

    /** Section 3, SETUP: with fewer pixels than before, the first frame also drives the dropped pixels dark, once. */
    @Test
    void drivesPixelsThatWereLeftOutOnce() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, WHITE);
        bench.pass(1);
        bench.tell(MessageType.SETUP, 2, SETUP_BODY.replaceFirst("0002", "0001"));
        bench.answers.clear();
        bench.tell(MessageType.FRAME, 3, "0000 01 ffffff");
        assertEquals(bench.now + 6 * 10_000 + 300_000, bench.answer().nanos());
        bench.pass(1);
        bench.tell(MessageType.FRAME, 4, "0000 01 ffffff");
        assertEquals(bench.now + 3 * 10_000 + 300_000, bench.answer().nanos());
    }

    @Test
    void listensWhileItDrivesTheStripIfItSaysSo() {
        Here listening = new Here(1, "1.0.0", 0, 300, 1024, 6, 3, 10_000, true);
        ControllerBench bench = new ControllerBench(listening);
        bench.setUp();
        bench.tell(MessageType.FRAME, 1, WHITE);
        bench.tell(MessageType.FRAME, 2, WHITE);
        assertEquals(2, bench.answers.size());
        assertTrue(bench.answers.get(1).nanos() >= 6 * 10_000, "the second waits for the first to be driven");
    }

    @Test
    void isDarkAndForgetfulAfterAReset() {
        ControllerBench bench = ControllerBench.board().setUp();
        bench.tell(MessageType.FRAME, 1, WHITE);
        bench.pass(1);
        bench.tellHex("1111 00");
        bench.answers.clear();
        bench.controller.start(bench.now);
        assertEquals(Vectors.wire("here_unasked"), bench.answer().wire());
        assertEquals(Light.DARK, bench.recording.last().light());
        bench.tell(MessageType.FRAME, 1, WHITE);
        assertEquals("050000", bench.answer().body());
    }

    /**
     * Bytes flipped, lost and doubled: whatever is shown is one of the frames sent, in which all bytes are alike. The seeds are fixed,
     * because one broken packet in 65 536 passes any 16-bit checksum.
     */
    @ParameterizedTest
    @CsvSource({"1, 0.0005", "2, 0.002", "3, 0.01", "4, 0.05"})
    void neverShowsAWrongFrame(long seed, double chance) {
        Setup setup = new Setup(
                50,
                "GRBW",
                List.of(100, 100, 100, 100),
                0,
                0,
                60_000,
                WhenSilent.KEEP,
                List.of(2000),
                List.of(new Setup.Dimmer(0, 1, 0)));
        ControllerBench bench = new ControllerBench(new Here(1, "1.0.0", 0, 300, 60, 6, 3, 0, true));
        bench.setUp(setup);
        UnaryOperator<byte[]> faults = Faults.all(seed, chance);
        Frame frame = new Frame(200, 1);
        for (int i = 0; i < 500; i++) {
            Arrays.fill(frame.strip(), (byte) i);
            frame.duties()[0] = i & 0xFF;
            bench.frame(frame, 60, faults);
            bench.pass(1);
        }
        bench.answers.clear();
        for (Recording.Entry shown : bench.recording.entries()) {
            int value = shown.duties().get(0);
            assertEquals(Collections.nCopies(200, value), shown.strip());
        }
        bench.tellHex("00");
        bench.answers.clear();
        bench.frame(frame, 60, Faults.none());
        assertEquals(
                "01", bench.answers.get(bench.answers.size() - 1).body().substring(0, 2), "in step within one frame");
    }
}
