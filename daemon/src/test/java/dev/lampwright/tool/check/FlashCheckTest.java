package dev.lampwright.tool.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.config.Config;
import dev.lampwright.engine.Configs;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: WCAG 2.x, success criterion 2.3.1: no more than three flashes in any one second. */
class FlashCheckTest {
    @ParameterizedTest
    @ValueSource(strings = {"Iso 0.2s", "Iso 0.25s", "swell 0.2s"})
    void aQuickRhythmIsFound(String rhythm) {
        assertEquals(
                List.of(new FlashCheck.Flashing("quick", List.of(0))),
                FlashCheck.of(looks("quick", "{ colour = \"white\", rhythm = \"" + rhythm + "\" }")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Iso 0.35s", "Q", "VQ", "Fl(2) 6s", "swell 1s"})
    void aCalmOneIsNot(String rhythm) {
        assertEquals(List.of(), FlashCheck.of(looks("calm", "{ colour = \"white\", rhythm = \"" + rhythm + "\" }")));
    }

    /** Red of the tenth part of full light is far from a general flash, and a red flash all the same. */
    @Test
    void dimRedIsFoundAndDimBlueIsNot() {
        assertEquals(
                1,
                FlashCheck.of(looks("red", "{ colour = \"red\", opacity = 0.1, rhythm = \"Iso 0.2s\" }"))
                        .size());
        assertEquals(
                0,
                FlashCheck.of(looks("blue", "{ colour = \"blue\", opacity = 0.1, rhythm = \"Iso 0.2s\" }"))
                        .size());
    }

    @Test
    void theLayerThatFlashesIsNamed() {
        Config config = looks(
                "mixed",
                "{ colour = \"green\", opacity = 0.3 }, { zone = \"job\", colour = \"white\", rhythm = \"Iso 0.2s\" },"
                        + " { zone = \"bed\", colour = \"red\", rhythm = \"Q\" }");
        assertEquals(List.of(new FlashCheck.Flashing("mixed", List.of(1))), FlashCheck.of(config));
    }

    /** Either of two would flash by itself, so neither alone can be taken away to mend it. */
    @Test
    void severalGuiltyLayersAreNotBlamedOnOne() {
        Config config = looks(
                "two",
                "{ zone = \"bed\", colour = \"white\", rhythm = \"Iso 0.2s\" },"
                        + " { zone = \"nozzle\", colour = \"white\", rhythm = \"Iso 0.2s\" }");
        assertEquals(List.of(new FlashCheck.Flashing("two", List.of())), FlashCheck.of(config));
    }

    /** A band that runs over a spot again and again flashes there, though the strip's mean never changes. */
    @Test
    void aBandThatRunsTooFastIsFound() {
        String slow = "{ colour = \"white\", extent = \"band\", width_px = 5, speed_px_per_s = 30 }";
        String fast = "{ colour = \"white\", extent = \"band\", width_px = 5, speed_px_per_s = 150 }";
        assertEquals(0, FlashCheck.of(looks("slow", slow)).size());
        assertEquals(1, FlashCheck.of(looks("fast", fast)).size());
    }

    /** Whatever is fitted, at any rate. */
    @ParameterizedTest
    @ValueSource(ints = {1, 8, 30, 144})
    void theBuiltInLooksAreCalm(int pixels) {
        for (int rate : new int[] {25, 60}) {
            assertEquals(List.of(), FlashCheck.of(Configs.of(pixels, "GRB", "frames_per_s = " + rate)));
        }
    }

    private static Config looks(String name, String layers) {
        return Configs.of(30, "GRB", "looks." + name + ".layers = [" + layers + "]\n");
    }
}
