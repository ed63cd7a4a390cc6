package dev.lampwright.tool.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.engine.Configs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: WCAG 2.x, success criterion 2.3.1: no more than three flashes in any one second. */
class FlashCheckTest {
    /** The flash rate follows from the period. */
    @ParameterizedTest
    @CsvSource({"Iso 0.2s, 5", "Iso 0.25s, 4", "swell 0.2s, 5", "Iso 0.1s, 10"})
    void aQuickRhythmIsFound(String rhythm, int flashes) {
        assertEquals(
                List.of(new FlashCheck.Flashing("quick", List.of(0), flashes, true)),
                FlashCheck.of(looks("quick", "{ colour = \"white\", rhythm = \"" + rhythm + "\" }")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Iso 0.35s", "Q", "VQ", "Fl(2) 6s", "swell 1s"})
    void aCalmOneIsNot(String rhythm) {
        assertEquals(List.of(), FlashCheck.of(looks("calm", "{ colour = \"white\", rhythm = \"" + rhythm + "\" }")));
    }

    /** Red at a tenth of full light is far from a general flash, but still a red flash. */
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
        assertEquals(List.of(new FlashCheck.Flashing("mixed", List.of(1), 5, true)), FlashCheck.of(config));
    }

    /** Either of two would flash by itself, so removing either alone does not fix it. */
    @Test
    void severalGuiltyLayersAreNotBlamedOnOne() {
        Config config = looks(
                "two",
                "{ zone = \"bed\", colour = \"white\", rhythm = \"Iso 0.2s\" },"
                        + " { zone = \"nozzle\", colour = \"white\", rhythm = \"Iso 0.2s\" }");
        assertEquals(List.of(new FlashCheck.Flashing("two", List.of(), 5, false)), FlashCheck.of(config));
    }

    /** A band that repeatedly crosses a spot flashes there, though the strip's mean never changes. */
    @Test
    void aBandThatRunsTooFastIsFound() {
        String slow = "{ colour = \"white\", extent = \"band\", width_px = 5, speed_px_per_s = 30 }";
        String fast = "{ colour = \"white\", extent = \"band\", width_px = 5, speed_px_per_s = 150 }";
        assertEquals(0, FlashCheck.of(looks("slow", slow)).size());
        assertEquals(
                List.of(new FlashCheck.Flashing("fast", List.of(0), 5, false)), FlashCheck.of(looks("fast", fast)));
    }

    /** Four bands of four pixels run through four zones, so that neither the strip's mean nor that of a zone ever changes. */
    @Test
    void bandsWhoseMeanStaysAreFound() {
        String layers = String.join(
                ", ",
                Stream.of("a", "b", "c", "d")
                        .map(zone -> "{ zone = \"" + zone
                                + "\", colour = \"white\", extent = \"band\", width_px = 4, speed_px_per_s = 120 }")
                        .toList());
        Config config = Configs.of(
                32,
                "GRB",
                "zones = { a = \"0-7\", b = \"8-15\", c = \"16-23\", d = \"24-31\" }\nlooks.chase.layers = [" + layers
                        + "]\n");
        assertEquals(List.of(new FlashCheck.Flashing("chase", List.of(), 15, false)), FlashCheck.of(config));
    }

    /** With its defaults, each is calm, on any strip. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "colour = \"white\"",
                "paint = \"ramp\", colours = [\"red\", \"lime\"]",
                "paint = \"ramp\", colours = [\"red\", \"lime\"], cycle_s = 3",
                "paint = \"scale\", colours = [\"red\", \"lime\"], by = \"bed.heat\"",
                "paint = \"ember\"",
                "colour = \"white\", extent = \"bar\", by = \"bed.heat\"",
                "colour = \"white\", extent = \"band\"",
                "colour = \"white\", extent = \"band\", cycle_s = 3",
                "colour = \"white\", extent = \"grains\"",
                "colour = \"white\", extent = \"pointer\", by = \"job.progress\""
            })
    void everyPaintAndExtentIsCalmByDefault(String layer) {
        for (int pixels : new int[] {8, 60, 300}) {
            Config config = Configs.of(pixels, "GRB", "looks.usual.layers = [{ " + layer + " }]\n");
            assertEquals(List.of(), FlashCheck.of(config), layer + " on " + pixels);
        }
    }

    /** Whatever is fitted, at any rate. */
    @ParameterizedTest
    @ValueSource(ints = {1, 8, 30, 144})
    void theBuiltInLooksAreCalm(int pixels) {
        for (int rate : new int[] {25, 60}) {
            assertEquals(List.of(), FlashCheck.of(Configs.of(pixels, "GRB", "frames_per_s = " + rate)));
        }
    }

    /** The example as shipped in the package, and the workshop of the demo. */
    @ParameterizedTest
    @ValueSource(strings = {"/dev/lampwright/config/example.toml", "/dev/lampwright/demo/demo.toml"})
    void theExamplesAreCalm(String resource) throws IOException, ConfigException {
        String text =
                new String(FlashCheckTest.class.getResourceAsStream(resource).readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(List.of(), FlashCheck.of(ConfigFile.read(text, resource)));
    }

    private static Config looks(String name, String layers) {
        return Configs.of(30, "GRB", "looks." + name + ".layers = [" + layers + "]\n");
    }
}
