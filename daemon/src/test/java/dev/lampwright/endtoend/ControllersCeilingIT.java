package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.link.LineException;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.EmulatedBoard;
import dev.lampwright.testing.Firmware;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** The firmware by itself keeps the ceiling, whatever a host demands. */
@Timeout(60)
class ControllersCeilingIT {
    /** The first byte of SHOWN, by wire.md: the frame is shown unchanged, or dimmed. */
    private static final int WHOLE = 1;

    private static final int DIMMED = 2;

    /** The offset of the counter of dimmed frames in SHOWN, by wire.md. */
    private static final int DIMMED_FRAMES_AT = 5;

    @TempDir
    Path folder;

    private EmulatedBoard board;
    private BareHost host;

    private void start(Firmware.Build build) throws LineException {
        board = EmulatedBoard.start(build, folder.resolve("board"));
        host = new BareHost(board.port(), build.hostBaud());
    }

    @AfterEach
    void stop() {
        host.close();
        board.close();
        assertEquals(List.of(), board.errors());
    }

    /** The example calculated by hand in wire.md, section 6: two white pixels of 74 mA at a ceiling of 50 mA. */
    @ParameterizedTest
    @FieldSource("dev.lampwright.testing.Firmware#USUAL")
    void theWorkedExample(Firmware.Build build) throws LineException {
        start(build);
        host.setUp(setup(2, 12_000, 1_000, 50));
        Frame white = new Frame(6, 0);
        Arrays.fill(white.strip(), (byte) 255);
        assertEquals(DIMMED, host.show(white).body().get(0));
        awaitLatched(List.of(169, 169, 169, 169, 169, 169));
    }

    /** The dark strip alone draws more than the ceiling: nothing is lit. */
    @ParameterizedTest
    @FieldSource("dev.lampwright.testing.Firmware#USUAL")
    void aDarkStripOverTheCeilingStaysDark(Firmware.Build build) throws LineException {
        start(build);
        host.setUp(setup(30, 12_000, 1_000, 29));
        Frame white = new Frame(90, 0);
        Arrays.fill(white.strip(), (byte) 255);
        assertEquals(DIMMED, host.show(white).body().get(0));
        awaitLatched(Collections.nCopies(90, 0));
    }

    @ParameterizedTest
    @FieldSource("dev.lampwright.testing.Firmware#USUAL")
    void noFrameIsLatchedThatTakesMoreThanTheCeiling(Firmware.Build build) throws LineException {
        start(build);
        SplittableRandom chance = new SplittableRandom(11);
        int dimmed = 0;
        for (int trial = 0; trial < 60; trial++) {
            Setup setup = someSetup(chance);
            host.setUp(setup);
            Frame asked = someFrame(setup, chance);
            SupplyDraw draw = new SupplyDraw(setup);
            long factor = draw.factor(0, draw.load(0, asked));
            BareHost.Answer answer = host.show(asked);
            boolean over =
                    milliamps(setup, levels(asked)) > setup.ceilingsMilliamps().get(0);
            dimmed += over ? 1 : 0;
            assertEquals(over ? DIMMED : WHOLE, answer.body().get(0), "trial " + trial);
            assertEquals(dimmed, answer.u16(DIMMED_FRAMES_AT));
            draw.dim(0, factor, asked);
            awaitLatched(levels(asked));
            assertTrue(
                    milliamps(setup, levels(asked)) <= setup.ceilingsMilliamps().get(0), "trial " + trial);
        }
        assertTrue(dimmed > 20 && dimmed < 60, "of 60 frames " + dimmed + " were dimmed");
    }

    /** The firmware may darken pixels beyond the strip's end that an earlier, longer strip had. */
    private void awaitLatched(List<Integer> strip) {
        Await.until(
                () -> "the strip latches " + strip + "; last " + board.last(),
                () -> board.lastIs(latched -> latched.faults().isEmpty() && isDarkAfter(strip, latched.strip())),
                Duration.ofSeconds(20));
    }

    private static boolean isDarkAfter(List<Integer> strip, List<Integer> latched) {
        int bytes = strip.size();
        return latched.size() >= bytes
                && latched.subList(0, bytes).equals(strip)
                && latched.subList(bytes, latched.size()).stream().allMatch(value -> value == 0);
    }

    private static Setup setup(int pixels, int channelMicroamps, int darkMicroamps, int ceiling) {
        return new Setup(
                pixels,
                "GRB",
                Collections.nCopies(3, channelMicroamps),
                darkMicroamps,
                0,
                60_000,
                WhenSilent.DARK,
                List.of(ceiling),
                List.of());
    }

    private static Setup someSetup(SplittableRandom chance) {
        int pixels = 1 + chance.nextInt(60);
        int dark = chance.nextInt(1500);
        int ceiling = pixels * dark / 1000 + 1 + chance.nextInt(40 * pixels);
        return setup(pixels, 5_000 + chance.nextInt(15_000), dark, ceiling);
    }

    private static Frame someFrame(Setup setup, SplittableRandom chance) {
        Frame frame = new Frame(setup.stripBytes(), 0);
        boolean white = chance.nextInt(3) == 0;
        for (int i = 0; i < frame.strip().length; i++) {
            frame.strip()[i] = (byte) (white ? 255 : chance.nextInt(256));
        }
        return frame;
    }

    private static List<Integer> levels(Frame frame) {
        List<Integer> levels = new ArrayList<>();
        for (byte value : frame.strip()) {
            levels.add(value & 0xFF);
        }
        return levels;
    }

    /** What a strip of this set-up draws, in mA; all its channels draw the same. */
    private static double milliamps(Setup setup, List<Integer> strip) {
        double each = setup.channelMicroamps().get(0) / 1000.0 / 255;
        return setup.pixels() * setup.darkMicroamps() / 1000.0
                + strip.stream().mapToInt(Integer::intValue).sum() * each;
    }
}
