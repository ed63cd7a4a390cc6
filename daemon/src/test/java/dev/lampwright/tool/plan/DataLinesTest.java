package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** An RP2040 board: its level, its data lines, its line. */
class DataLinesTest {
    private static final String EIGHT = """
            strip.pixels = 2400
            strip.outputs = [300, 300, 300, 300, 300, 300, 300, 300]
            supply.ceiling_mA = 60000
            """;

    @ParameterizedTest
    @ValueSource(strings = {"controller.board = \"rp2040\"", "strip.outputs = [10, 20]"})
    void threeVoltsNeedAShifterWithoutBeingAsked(String told) {
        Verdict level = Rigs.verdict(Rigs.plan("strip.pixels = 30\n" + told), "data level");
        assertEquals(Verdict.Severity.OVER, level.level());
        assertTrue(level.what().startsWith("high of the RP2040's pins is 3.30 V, "), level.what());
        assertTrue(
                level.remedy().startsWith("put a 5 V level shifter with TTL inputs in between (74AHCT125"),
                level.remedy());
        assertTrue(level.remedy().contains("wiring.board.data = \"shifted\""), level.remedy());
    }

    /** A file for an RP2040 that does not name the board would be judged by the 5 V of the other one. */
    @Test
    void aLevelThatTheFileDoesNotGiveIsMarkedAsAssumed() {
        Verdict level = Rigs.verdict(Rigs.plan("strip.pixels = 30"), "data level");
        assertTrue(level.assumed());
        assertTrue(level.what().startsWith("high is 5.00 V for this board, 3.3 V for an RP2040, "), level.what());
        for (String told : List.of("wiring.board.logic_V = 5", "controller.board = \"rp2040\"")) {
            assertFalse(Rigs.verdict(Rigs.plan("strip.pixels = 30\n" + told), "data level")
                    .assumed());
        }
    }

    @Test
    void aShifterMakesItGood() {
        Plan plan = Rigs.plan("strip.pixels = 30\ncontroller.board = \"rp2040\"\nwiring.board.data = \"shifted\"");
        assertEquals(Verdict.Severity.GOOD, Rigs.verdict(plan, "data level").level());
    }

    @Test
    void eachDataLineHasItsPinAndItsPixels() {
        Plan plan = Rigs.plan("strip.pixels = 30\nstrip.outputs = [12, 0, 18]");
        assertTrue(Rigs.verdict(plan, "data line 0").what().startsWith("pin GP2 carries pixels 0 to 11, "));
        assertTrue(Rigs.verdict(plan, "data line 2").what().startsWith("pin GP4 carries pixels 12 to 29, "));
        assertEquals(
                2,
                plan.verdicts().stream()
                        .filter(verdict -> verdict.subject().startsWith("data line"))
                        .count());
        assertTrue(Rigs.verdict(plan, "data level").remedy().contains("four gates a part: 2 are needed"));
    }

    @Test
    void aStripOnOneLineIsAsBefore() {
        Plan plan = Rigs.plan("strip.pixels = 30");
        assertTrue(
                plan.verdicts().stream().noneMatch(verdict -> verdict.subject().startsWith("data line")));
        assertTrue(PlanPicture.of(plan).contains("data: pin D4"));
    }

    /** At 60 frames a second 16.67 ms − 0.28 ms make 546 pixels of 30 µs. */
    @Test
    void aLineThatIsTooLongIsNamed() {
        Plan plan = Rigs.plan("strip.pixels = 600\nstrip.outputs = [547, 53]\nsupply.ceiling_mA = 60000");
        Verdict first = Rigs.verdict(plan, "data line 0");
        assertEquals(Verdict.Severity.CARE, first.level());
        assertTrue(first.what().endsWith("at 60 frames a second one line carries 546"), first.what());
        assertEquals(Verdict.Severity.GOOD, Rigs.verdict(plan, "data line 1").level());
    }

    /** The emulated board reaches 107.3 and 106.1 (firmware-notes/README.md, "Sizes and speed"): 95 % of this at least. */
    @ParameterizedTest
    @CsvSource({"300, 107.3", "2400, 106.1"})
    void asTheFirmwareIsMeasuredOverUsb(int pixels, double measured) {
        String file =
                pixels == 300 ? "strip.pixels = 300\nsupply.ceiling_mA = 60000\ncontroller.board = \"rp2040\"" : EIGHT;
        double most = FrameRate.of(Rigs.of(file).setup(), 0, true).most();
        assertTrue(measured <= most && measured >= 0.95 * most, most + " frames a second");
    }

    @Test
    void theDrawingHasEveryDataLine() {
        String picture = PlanPicture.of(Rigs.plan(EIGHT));
        assertTrue(picture.contains("data: pin GP2"), picture);
        for (String pin : List.of("GP3", "GP4", "GP5", "GP6", "GP7", "GP8", "GP9")) {
            assertTrue(picture.contains(">" + pin + "<"), pin);
        }
        assertTrue(picture.contains("8 data lines: each as the first"));
    }
}
