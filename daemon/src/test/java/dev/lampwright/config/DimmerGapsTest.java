package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Setup;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Lights on some of the controller's dimmers: the others exist for the controller only. */
class DimmerGapsTest {
    private static final String FILE = """
        [broker]
        url = "mqtt://127.0.0.1"
        [printer.readings]
        bed.actual_C = { topic = "shop/alder/bed" }
        [controller]
        port = "/dev/ttyACM0"
        [strip]
        pixels = 10
        [dimmers]
        glow = { channels = [5, 3, 7], volts = 12, full_mA = 300 }
        work = { channel = 1, volts = 24, full_mA = 800 }
        """;

    private static Config config(String more) throws ConfigException {
        return ConfigFile.read(FILE + more, "alder.toml");
    }

    @Test
    void noLightIsInventedForAGap() throws ConfigException {
        Config config = config("");
        assertEquals(List.of("work", "glow"), config.fitting().dimmerNames());
        assertEquals(
                List.of("work", "glow"),
                config.wiring().lights().stream().map(Wiring.Light::name).toList());
        assertEquals(
                List.of(List.of(1), List.of(3, 5, 7)),
                config.wiring().lights().stream().map(Wiring.Light::outputs).toList());
    }

    @Test
    void theControllerHasAllUpToTheLastInUse() throws ConfigException {
        Config config = config("");
        assertEquals(
                List.of(0, 800, 0, 300, 0, 300, 0, 300),
                config.setup().dimmers().stream()
                        .map(Setup.Dimmer::fullMilliamps)
                        .toList());
        List<Fitting.DimmerUse> uses = config.fitting().dimmers();
        assertEquals(Fitting.DimmerUse.none(), uses.get(4));
        assertEquals(new Fitting.DimmerUse("glow", 10, 0), uses.get(5));
        assertEquals(new Fitting.DimmerUse("glow", 10, 1), uses.get(3));
        assertTrue(
                uses.get(1).isWhite() && !uses.get(0).isWhite() && !uses.get(0).isColour());
    }

    @Test
    void whatIsCalledUnusedIsTheSame() throws ConfigException {
        Config config = config("spare = { channel = 0, unused = true }\n");
        assertEquals(config("").fitting(), config.fitting());
        assertEquals(config("").setup(), config.setup());
    }
}
