package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.printer.PrinterState;
import java.util.HashSet;
import java.util.Map;
import org.junit.jupiter.api.Test;

class StateColoursTest {
    private static final String BARE = """
            broker.url = "mqtt://alder"
            printer.state = { topic = "shop/alder/job", fault = ["ALARM"] }
            printer.silent_after_s = 1
            controller.port = "/dev/ttyACM0"
            supply.ceiling_mA = 2500
            strip.pixels = 30
            """;

    private static Map<PrinterState, String> colours(String more) throws ConfigException {
        return StateColours.of(ConfigFile.read(BARE + more, "alder.toml"));
    }

    @Test
    void eachStateHasTheColourOfItsLook() throws ConfigException {
        Map<PrinterState, String> colours = colours("""
                [looks.red]
                layers = [{ colour = "red" }]
                [looks.dim]
                layers = [{ colour = "blue", opacity = 0.02 }]
                [looks.dark]
                layers = [{ colour = "black" }]
                [[cues]]
                state = "fault"
                look = "red"
                [[cues]]
                state = "idle"
                look = "dim"
                [[cues]]
                look = "dark"
                """);
        assertEquals("#ff0000", colours.get(PrinterState.FAULT));
        String dim = colours.get(PrinterState.IDLE);
        assertTrue(dim.matches("#0000[89a].|#0000[89a]."), dim + " is blue, and can be seen");
        assertEquals("#404040", colours.get(PrinterState.DONE));
    }

    @Test
    void theBuiltInLooksAreToldApart() throws ConfigException {
        Map<PrinterState, String> colours = colours("");
        assertEquals(PrinterState.values().length, colours.size());
        assertEquals(colours.size(), new HashSet<>(colours.values()).size(), colours.toString());
    }
}
