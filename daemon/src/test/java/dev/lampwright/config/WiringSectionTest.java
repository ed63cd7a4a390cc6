package dev.lampwright.config;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.board.BoardKind;
import dev.lampwright.toml.Toml;
import dev.lampwright.wiring.Conductor;
import dev.lampwright.wiring.Surroundings;
import dev.lampwright.wiring.Wire;
import dev.lampwright.wiring.Wiring;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WiringSectionTest {
    /** A good file of eight lines. */
    private static final String GOOD = """
            broker.url = "mqtt://alder"
            printer.state.topic = "shop/alder/job"
            printer.state.printing = ["RUN"]
            controller.port = "/dev/ttyACM0"
            strip.pixels = 10
            dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
            dimmers.glow = { channel = 1, volts = 12, full_mA = 300 }
            dimmers.side = { channel = 2, volts = 5, full_mA = 100 }
            """;

    private static Wiring wiring(String lines) throws ConfigException {
        return ConfigFile.read(GOOD + lines, "t.toml").wiring();
    }

    private static String mistake(String line) {
        List<Mistake> mistakes =
                assertThrows(ConfigException.class, () -> wiring(line)).mistakes();
        assertEquals(1, mistakes.size(), mistakes.toString());
        return mistakes.get(0).toString();
    }

    /** Nobody knows what feeds a light with a mistake: its supply may be the one that is named. */
    @Test
    void aMistakeInALightIsTheOnlyOne() {
        String supplies = "wiring.supplies = { bars = { volts = 24, amps = 2.5 }, strip = { volts = 5 } }\n";
        for (String wrong :
                List.of("full_mA = 70000", "full_mA = \"x\"", "full_mA = 800, colour = 1", "channels = [1]")) {
            String text = (GOOD + supplies).replace("full_mA = 800", wrong);
            List<Mistake> mistakes = assertThrows(ConfigException.class, () -> ConfigFile.read(text, "t.toml"))
                    .mistakes();
            assertTrue(mistakes.stream().allMatch(each -> each.toString().contains(": dimmers.")), mistakes::toString);
        }
        List<Mistake> volts = assertThrows(
                        ConfigException.class, () -> ConfigFile.read(GOOD + supplies + "supply.volts = 99\n", "t.toml"))
                .mistakes();
        assertEquals(1, volts.size(), volts::toString);
    }

    @Test
    void everythingIsUnderstood() throws ConfigException {
        Wiring wiring = wiring("""
                [wiring]
                wire_C = 30
                ambient_C = 45
                insulation_C = 105
                connector_C = 105
                bundled = 3
                [wiring.supplies]
                strip = { volts = 5, amps = 4, connector_A = 3, tolerance_percent = 5 }
                bars = { volts = 24, amps = 2.5 }
                [wiring.strip]
                from = "board"
                wire = "18 AWG"
                conductor = "cca"
                contacts_mohm = 20
                fuse_mohm = 50
                points = [9, 0]
                length_m = [2, 1]
                connector_A = 3
                fuse_A = 2.5
                pixels_per_m = 30
                loop_ohm_per_m = 0.3
                full_colour_V = 4.2
                least_V = 3.7
                pwm_Hz = 2000
                pulses = "apart"
                [wiring.dimmers.work]
                wire = "0.75 mm2"
                length_m = 1.5
                connector_A = 1
                fuse_A = 1.25
                load_W = 19
                pwm_Hz = 1000
                [wiring.board]
                logic_V = 3.3
                data = "shifted"
                rated_mA = 800
                own_mA = 40
                input_V = 12
                [wiring.computer]
                amps = 2
                supply = "bars"
                """);
        assertEquals(30, wiring.wireC());
        assertEquals(new Surroundings(45, 105, 105, 3), wiring.around());
        assertEquals(
                List.of(
                        new Wiring.Supply("strip", 5, 0.05, OptionalDouble.of(4), OptionalDouble.of(3)),
                        new Wiring.Supply("12 V", 12, 0.02, OptionalDouble.empty(), OptionalDouble.empty()),
                        new Wiring.Supply("bars", 24, 0.02, OptionalDouble.of(2.5), OptionalDouble.empty())),
                wiring.supplies());
        Wiring.Feed feed = new Wiring.Feed(
                Wire.awg(18).of(Conductor.CCA),
                OptionalDouble.of(3),
                OptionalDouble.of(2.5),
                0.02,
                OptionalDouble.of(0.05));
        List<Wiring.Point> points = List.of(new Wiring.Point(0, 1), new Wiring.Point(9, 2));
        assertEquals(new Wiring.Strip(true, feed, points, 30, 0.3, 4.2, 3.7, 2000, false), wiring.strip());
        Wiring.Feed work = new Wiring.Feed(
                Wire.metric(0.75), OptionalDouble.of(1), OptionalDouble.of(1.25), 0.04, OptionalDouble.empty());
        assertEquals(
                new Wiring.Light("work", List.of(0), work, 1.5, OptionalDouble.of(19), 1000),
                wiring.lights().get(0));
        assertEquals(new Wiring.Board(BoardKind.ATMEGA328P, 3.3, true, 0.8, 0.04, 12), wiring.board());
        assertEquals(new Wiring.Computer(2, OptionalInt.of(2)), wiring.computer());
    }

    @Test
    void allOfItMayBeLeftOut() throws ConfigException {
        Wiring wiring = wiring("");
        assertEquals(
                List.of(5.0, 12.0, 24.0),
                wiring.supplies().stream().map(Wiring.Supply::volts).toList());
        assertEquals(
                List.of("work", "glow", "side"),
                wiring.lights().stream().map(Wiring.Light::name).toList());
        assertEquals(
                List.of(7812.5, 7812.5, 3906.25),
                wiring.lights().stream().map(Wiring.Light::pwmHz).toList());
        assertEquals("20 AWG", wiring.defaults().get("wiring.strip.wire"));
        assertEquals("20 AWG", wiring.defaults().get("wiring.dimmers.glow.wire"));
        assertEquals("0", wiring.defaults().get("wiring.strip.points"));
        assertEquals("own", wiring.defaults().get("wiring.computer.supply"));
    }

    /** They would bury what {@code check} has to report. */
    @Test
    void itsDefaultsAreToldByThePlanOnly() throws ConfigException {
        Mistakes findings = new Mistakes("t.toml", Toml.read(GOOD));
        Table root = findings.root();
        Wiring wiring = WiringSection.read(root, BoardKind.ATMEGA328P, 5, 10, List.of("work", "glow", "side"));
        assertAbove(10, wiring.defaults().size());
        assertTrue(findings.defaults().isEmpty(), findings.defaults().toString());
    }

    @ParameterizedTest
    @CsvSource({
        "wiring.wire_C, 91, 0 to 90",
        "wiring.strip.length_m, 0, 0.01 to 100",
        "wiring.strip.points, 10, 0 to 9",
        "wiring.strip.fuse_A, 0, 0.1 to 100",
        "wiring.strip.connector_A, -1, 0.1 to 100",
        "wiring.strip.pixels_per_m, 0, 1 to 1000",
        "wiring.strip.loop_ohm_per_m, 0, 0.001 to 100",
        "wiring.dimmers.work.load_W, 0, 0.001 to 1000",
        "wiring.dimmers.work.pwm_Hz, true, 1 to 1000000",
        "wiring.board.logic_V, 12, 1 to 5.5",
        "wiring.computer.amps, 0, 0.01 to 100"
    })
    void numbers(String key, String value, String range) {
        assertEquals(
                "t.toml:9: " + key + ": is " + value + "; give a number from " + range, mistake(key + " = " + value));
    }

    @Test
    void otherMistakes() {
        assertEquals(
                "t.toml:9: wiring.strip.wire: is \"thin\", which is not a size of wire here; " + Wire.WANTED,
                mistake("wiring.strip.wire = \"thin\""));
        assertEquals("t.toml:9: wiring.strip.wire: is 20, not text; " + Wire.WANTED, mistake("wiring.strip.wire = 20"));
        assertEquals(
                "t.toml:9: wiring.strip.from: is \"roof\"; give one of \"supply\", \"board\"",
                mistake("wiring.strip.from = \"roof\""));
        assertEquals(
                "t.toml:9: wiring.supplies.bars.volts: is 48, but no light is fed with that; give 5 or 12 or 24",
                mistake("wiring.supplies.bars.volts = 48"));
        assertEquals(
                "t.toml:9: wiring.computer.supply: is \"bars\", which is not a supply; give \"own\", or one of \"5 V\", \"12 V\", \"24 V\"",
                mistake("wiring.computer.supply = \"bars\""));
        assertEquals("t.toml:9: wiring.strp: is not known; did you mean strip?", mistake("wiring.strp = {}"));
        assertEquals(
                "t.toml:9: wiring.dimmers.worc: is not known; did you mean work?", mistake("wiring.dimmers.worc = {}"));
    }

    @Test
    void supplies() {
        assertTrue(mistake("wiring.supplies.bars = { amps = 2 }")
                .startsWith("t.toml:9: wiring.supplies.bars.volts: is missing; give a number"));
        assertEquals(
                "t.toml:9: wiring.supplies.b.volts: is 24, as that of a; give each voltage once: its lights share a supply",
                mistake("wiring.supplies = { a = { volts = 24 }, b = { volts = 24 } }"));
    }

    @Test
    void points() {
        String wanted = "; give the pixels where wires from the supply join, each once, from 0 to 9";
        assertEquals("t.toml:9: wiring.strip.points: is empty" + wanted, mistake("wiring.strip.points = []"));
        assertEquals(
                "t.toml:9: wiring.strip.points: has a number in it that is not whole" + wanted,
                mistake("wiring.strip.points = [0, 1.5]"));
        assertEquals(
                "t.toml:9: wiring.strip.points: has a pixel twice" + wanted, mistake("wiring.strip.points = [3, 3]"));
        assertEquals(
                "t.toml:9: wiring.strip.length_m: has 2 numbers, but there are 3 points; give one number for all wires, or one for each point",
                mistake("wiring.strip = { points = [0, 4, 9], length_m = [1, 2] }"));
    }

    @Test
    void mistakesElsewhereAreNotToldTwice() {
        assertEquals(
                "t.toml:9: dimmers.last.volts: is missing; give a number from 1 to 60",
                mistake("dimmers.last = { channel = 3, full_mA = 1 }"));
    }
}
