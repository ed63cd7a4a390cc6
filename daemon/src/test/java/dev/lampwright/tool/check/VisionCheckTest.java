package dev.lampwright.tool.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.colour.ColourVision;
import dev.lampwright.config.Config;
import dev.lampwright.engine.Configs;
import dev.lampwright.printer.PrinterState;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Distinguishing states without colour. The simulation is that of Machado, Oliveira and Fernandes 2009, checked against its source
 * elsewhere; that red and green are hard to distinguish without green cones is common knowledge.
 */
class VisionCheckTest {
    private static final String GREEN = "{ colour = \"#00ae00\" }";

    /** Even on a few pixels; a single one has no shape. */
    @ParameterizedTest
    @ValueSource(ints = {7, 30, 144})
    void theBuiltInLooksAreToldApart(int pixels) {
        assertEquals(List.of(), VisionCheck.of(Configs.of(pixels, "GRB", "")));
    }

    /** Light of full red and of green to 0.42 is the same to them: Machado's matrix gives 0.37 0.28 and 0.36 0.28. */
    @Test
    void aPairThatOnlyDiffersInRedAndGreenIsWarnedOf() {
        VisionCheck.Alike alike = new VisionCheck.Alike(
                PrinterState.DONE, PrinterState.FAULT, "done", "fault", List.of(ColourVision.DEUTAN));
        assertEquals(List.of(alike), VisionCheck.of(looks(GREEN, "{ colour = \"red\" }")));
    }

    @Test
    void theSamePairIsToldApartByColourRhythmOrShape() {
        assertEquals(List.of(), VisionCheck.of(looks(GREEN, "{ colour = \"blue\" }")));
        assertEquals(List.of(), VisionCheck.of(looks(GREEN, "{ colour = \"red\", rhythm = \"Q\" }")));
        assertEquals(List.of(), VisionCheck.of(looks(GREEN, "{ zone = \"bed\", colour = \"red\" }")));
    }

    /** Rhythms are the same whenever they began. */
    @Test
    void whenARhythmBeganDoesNotTellApart() {
        String one = "{ colour = \"#00ae00\", rhythm = \"Iso 4s\" }";
        String other = "{ colour = \"red\" }, { colour = \"black\", rhythm = \"Iso 4s\" }";
        assertEquals(1, VisionCheck.of(looks(one, other)).size());
    }

    /** If one look is shown for several states, that is intended. */
    @Test
    void statesThatShareALookAreNotWarnedOf() {
        Config config = Configs.of(
                30,
                "GRB",
                "looks.calm.layers = [" + GREEN + "]\n[[cues]]\nstate = [\"done\", \"idle\"]\nlook = \"calm\"\n");
        assertEquals(List.of(), VisionCheck.of(config));
    }

    private static Config looks(String done, String fault) {
        return Configs.of(30, "GRB", "looks.done.layers = [" + done + "]\nlooks.fault.layers = [" + fault + "]\n");
    }
}
