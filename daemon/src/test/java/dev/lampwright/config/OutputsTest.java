package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.board.BoardKind;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The data lines that the strip is on, and what a board named in the file cannot do. */
class OutputsTest {
    private static String file(String strip, String more) {
        return """
                broker.url = "mqtt://alder"
                printer.state.topic = "shop/alder/job"
                printer.state.printing = ["RUN"]
                controller.port = "/dev/ttyACM0"
                strip.pixels = 30
                """ + strip + "\n" + more;
    }

    private static Config read(String strip, String more) throws ConfigException {
        return ConfigFile.read(file(strip, more), "t.toml");
    }

    private static void assertOnly(String words, String strip, String more) {
        List<Mistake> mistakes =
                assertThrows(ConfigException.class, () -> read(strip, more)).mistakes();
        assertEquals(
                List.of("t.toml:" + words),
                mistakes.stream().map(Mistake::toString).toList());
    }

    private static List<Setup.Run> runs(String outputs) throws ConfigException {
        return read("strip.outputs = " + outputs, "").setup().runs();
    }

    @Test
    void withoutOutputsTheStripIsNotCut() throws ConfigException {
        assertEquals(List.of(), read("", "").setup().runs());
    }

    @Test
    void eachDataLineHasItsPixels() throws ConfigException {
        assertEquals(List.of(new Setup.Run(0, 10), new Setup.Run(1, 20)), runs("[10, 20]"));
        assertEquals(
                IntStream.range(0, 8)
                        .mapToObj(i -> new Setup.Run(i, i == 7 ? 23 : 1))
                        .toList(),
                runs("[1, 1, 1, 1, 1, 1, 1, 23]"));
    }

    @Test
    void aDataLineMayBeSkipped() throws ConfigException {
        assertEquals(List.of(new Setup.Run(1, 12), new Setup.Run(3, 18)), runs("[0, 12, 0, 18, 0]"));
    }

    /** So that a controller that does not know runs accepts it. */
    @ParameterizedTest
    @ValueSource(strings = {"[30]", "[30, 0]"})
    void allOnTheFirstDataLineIsNotCut(String outputs) throws ConfigException {
        assertEquals(List.of(), runs(outputs));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            []                          | is empty; give the pixels of each data line, 8 at most, in the order along the strip, for instance [300, 300], or leave it out
            [10, 19]                    | has 29 pixels together, and the strip has 30; let them add up to strip.pixels
            [10, 21]                    | has 31 pixels together, and the strip has 30; let them add up to strip.pixels
            [22, 1, 1, 1, 1, 1, 1, 1, 1]| has 9 data lines, and no controller has more than 8; give the pixels of each data line, 8 at most, in the order along the strip, for instance [300, 300]
            [10.5, 19.5]                | has a number in it that is not whole; give the pixels of each data line, 8 at most, in the order along the strip, for instance [300, 300]
            30                          | is 30; give numbers in an array
            [-1, 31]                    | is -1; give a number from 0 to 65535
            ["ten", 20]                 | is "ten"; give a number from 0 to 65535
            """)
    void mistakes(String outputs, String words) {
        assertOnly("6: strip.outputs: " + words, "strip.outputs = " + outputs, "");
    }

    /** A wrong pixel count is the only mistake reported. */
    @Test
    void noMistakeFollowsFromAnother() {
        assertThrows(
                        ConfigException.class,
                        () -> ConfigFile.read(
                                file("strip.outputs = [10, 20]", "").replace("= 30", "= 0"), "t"))
                .mistakes()
                .forEach(mistake -> assertEquals("strip.pixels", mistake.key()));
    }

    @Test
    void oneDataLineOfTheAtmega328p() {
        assertOnly(
                "6: strip.outputs: has 2 data lines, and the ATmega328P has 1; remove it, and join the strip end to end, or take an RP2040 board",
                "strip.outputs = [10, 20]",
                "controller.board = \"atmega328p\"");
    }

    @ParameterizedTest
    @CsvSource({
        "GRB, atmega328p, 400",
        "GRBW, atmega328p, 300",
        "GRB, rp2040, 4000",
        "GRBW, rp2040, 3000",
    })
    void asManyPixelsAsTheBoardHasRoomFor(String order, String board, int most) throws ConfigException {
        String more =
                "strip.order = \"" + order + "\"\nsupply.ceiling_mA = 60000\ncontroller.board = \"" + board + "\"\n";
        ConfigFile.read(file("", more).replace("= 30", "= " + most), "t.toml");
        String words = assertThrows(
                        ConfigException.class,
                        () -> ConfigFile.read(file("", more).replace("= 30", "= " + (most + 1)), "t.toml"))
                .getMessage();
        assertTrue(words.contains("5: strip.pixels: is " + (most + 1) + ", and the "), words);
        assertTrue(words.contains("has room for " + most + " of " + order.length() + " channels; give fewer"), words);
    }

    @Test
    void moreDimmersThanTheBoardHas() {
        assertOnly(
                "10: dimmers.side: needs more dimmers than the RP2040 has, which are channels 0 to 5; leave it out, or fit a second controller",
                "",
                """
                controller.board = "rp2040"
                dimmers.one = { channels = [0, 1, 2], volts = 24, full_mA = 100 }
                dimmers.other = { channels = [3, 4, 5], volts = 24, full_mA = 100 }
                dimmers.side = { channel = 6, volts = 24, full_mA = 100 }
                """);
    }

    @ParameterizedTest
    @CsvSource({
        "'', '', ATMEGA328P, 5",
        "'', 'controller.board = \"rp2040\"', RP2040, 3.3",
        "'strip.outputs = [10, 20]', '', RP2040, 3.3",
        "'', 'wiring.board.logic_V = 3.3', ATMEGA328P, 3.3",
        "'strip.outputs = [10, 20]', 'wiring.board.logic_V = 5', RP2040, 5",
    })
    void whatBoardItIs(String strip, String more, BoardKind kind, double volts) throws ConfigException {
        Config config = read(strip, more);
        assertEquals(kind, config.wiring().board().kind());
        assertEquals(volts, config.wiring().board().logicVolts());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/dev/lampwright/rp2040-e0c9a52b3c4d5e6f",
                "/dev/serial/by-id/usb-Lampwright_Controller_RP2040_e0c9-if00"
            })
    void thePortsNameSaysWhichBoard(String port) throws ConfigException {
        Config config = ConfigFile.read(file("", "").replace("/dev/ttyACM0", port), "t.toml");
        assertEquals(BoardKind.RP2040, config.wiring().board().kind());
    }

    /** The numbers are those that the firmware is built with. */
    @Test
    void theBoardsAreThoseOfTheFirmware() throws IOException {
        Path reference = Path.of("..", "firmware-notes", "reference");
        String usual = Files.readString(reference.resolve("core").resolve("limits.h"));
        String rp2040 = Files.readString(reference.resolve("rp2040").resolve("Makefile"));
        for (BoardKind kind : BoardKind.values()) {
            String numbers = kind == BoardKind.RP2040 ? rp2040.replace('=', ' ') : usual;
            assertHas("STORE_BYTES " + kind.stripBytes(), numbers);
            assertHas("DIMMERS " + kind.dimmers(), numbers);
            assertHas("OUTPUTS " + kind.outputs(), numbers);
        }
        assertTrue(
                Files.readString(reference.resolve("rp2040").resolve("pins.h")).contains("STRIP_FIRST_PIN 2"));
        assertTrue(
                Files.readString(reference.resolve("rp2040").resolve("pins.h")).contains("DIMMER_FIRST_PIN 10"));
        assertEquals("GP15", BoardKind.RP2040.dimmerPin(5));
        assertEquals(
                List.of("D4", "GP2", "GP9"),
                List.of(BoardKind.ATMEGA328P.dataPin(0), BoardKind.RP2040.dataPin(0), BoardKind.RP2040.dataPin(7)));
    }

    private static void assertHas(String word, String numbers) {
        assertTrue(Pattern.compile(word + "\\b").matcher(numbers).find(), word);
    }
}
