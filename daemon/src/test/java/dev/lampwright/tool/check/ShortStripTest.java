package dev.lampwright.tool.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import dev.lampwright.config.Config;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.Configs;
import dev.lampwright.look.Zone;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShortStripTest {
    private static Config shortened(int pixels, String more) {
        return ShortStrip.of(Configs.of(pixels, "GRB", more));
    }

    private static Zone zone(Config config, String name) {
        return config.fitting().zones().get(name);
    }

    @Test
    void aShortStripStaysAsItIs() {
        Config config = Configs.of(ShortStrip.PIXELS, "GRB", "");
        assertSame(config, ShortStrip.of(config));
    }

    @Test
    void zonesGetShorterInProportionAndLieAsTheyDid() {
        Config config = shortened(4000, "[zones]\nlow = \"0-999\"\nhigh = \"3999-1000\"");
        assertEquals(300, config.setup().pixels());
        assertEquals(Zone.run(0, 74), zone(config, "low"));
        assertEquals(Zone.run(299, 75), zone(config, "high"));
    }

    @Test
    void aSmallZoneIsLeftWhole() {
        Config config = shortened(4000, "[zones]\nbed = \"0-1999\"\nnozzle = \"2000-3999\"\nbutton = \"100-115\"");
        assertEquals(16, zone(config, "button").length());
    }

    @Test
    void aMirroredZoneStaysMirrored() {
        Config config = shortened(1200, "[zones]\nboth = \"0-1199 mirrored\"");
        assertEquals(Zone.run(0, 299).mirrored(), zone(config, "both"));
    }

    /** A zone of scattered pixels has no stretch that could be left out. */
    @Test
    void scatteredPixelsAreAllKept() {
        Config config = shortened(1000, "[zones]\nodd = \"1-999 every 2\"");
        assertEquals(1000, config.setup().pixels());
        assertEquals(500, zone(config, "odd").length());
    }

    /** At full. Rounding to whole µA loses less than 1 %. */
    @ParameterizedTest
    @ValueSource(ints = {301, 1000, 4000, 21_845})
    void theStripTakesAsMuchCurrent(int pixels) {
        Config whole = Configs.of(pixels, "GRB", "");
        Config config = ShortStrip.of(whole);
        assertEquals(total(whole), total(config), 0.01 * total(whole));
    }

    private static double total(Config config) {
        return (double) config.setup().pixels()
                * config.setup().channelMicroamps().get(0);
    }

    @ParameterizedTest
    @CsvSource({"white, Iso 0.2s, 5", "white, Q, 0", "red, Iso 0.25s, 4"})
    void flashesAreFoundAsOnTheWholeStrip(String colour, String rhythm, int flashes) {
        String look = "[looks.tried]\nlayers = [{ colour = \"" + colour + "\", rhythm = \"" + rhythm + "\" }]";
        List<Integer> found = FlashCheck.of(Configs.of(3000, "GRB", look)).stream()
                .map(FlashCheck.Flashing::flashes)
                .toList();
        assertEquals(flashes == 0 ? List.of() : List.of(flashes), found);
    }

    @Test
    void lightsOnDimmersComeAfterTheShortStrip() {
        String dimmers = "[dimmers]\nbars = { channels = [0, 1, 2], volts = 24, full_mA = 300 }";
        Config config = shortened(2000, dimmers);
        assertEquals(300, config.fitting().dimmers().get(0).colourPixel());
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        Chain.of(config).make(PrinterStatus.nothingHeard(), 0, frame);
    }
}
