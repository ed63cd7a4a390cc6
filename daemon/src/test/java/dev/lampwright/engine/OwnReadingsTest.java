package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Mistake;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.StatusLines;
import dev.lampwright.printer.StatusReader;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.Frame;
import dev.lampwright.tool.check.MadeUpStatus;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** User-defined readings: read from messages, followed by light, recorded and played back. */
class OwnReadingsTest {
    private static final String TOPIC = "shop/alder/more";
    private static final String READINGS = """
            [printer.readings]
            print_speed = { topic = "shop/alder/more", at = "/speed", unit = "percent", range = [0, 200] }
            fan.part = { topic = "shop/alder/more", at = "/fan", scale = 0.392, unit = "percent" }
            box.humidity = { topic = "shop/alder/more", at = "/damp", unit = "% rh", range = [60, 10] }
            filament_left = { topic = "shop/alder/more", at = "/left", unit = "g" }
            bed.actual_C = { topic = "shop/alder/more", at = "/bed" }
            """;
    private static final String LOOK = """
            [looks.busy]
            layers = [{ colour = "white", extent = "bar", by = "print_speed" }]
            [[cues]]
            signal = "print_speed"
            above = 150
            look = "busy"
            """;
    private static final long SECOND = 1_000_000_000L;

    private static final String FILE = """
            broker.url = "mqtt://alder"
            printer.readings.job.progress.topic = "shop/alder/job"
            controller.port = "/dev/ttyACM0"
            strip = { pixels = 10, order = "GRB" }
            supply.ceiling_mA = 65535
            """;

    private static Config config(String more) throws ConfigException {
        return ConfigFile.read(
                FILE.replace("printer.readings.job.progress.topic = \"shop/alder/job\"\n", "") + more, "t.toml");
    }

    private static PrinterStatus heard(Config config, String json) {
        return new StatusReader(config.bindings())
                .read(PrinterStatus.nothingHeard(), TOPIC, json.getBytes(StandardCharsets.UTF_8), 0);
    }

    @Test
    void areReadInTheUnitInWhichTheyAreTold() throws ConfigException {
        PrinterStatus status = heard(
                config(READINGS),
                "{\"speed\": 120, \"fan\": 255, \"damp\": \"35 % rh\", \"left\": \"412.5\", \"bed\": 60}");
        assertEquals(120, status.own("print_speed").value());
        assertEquals(99.96, status.own("fan.part").value(), 1e-9);
        assertEquals(35, status.own("box.humidity").value());
        assertEquals(412.5, status.own("filament_left").value());
        assertEquals(60, status.value(dev.lampwright.payload.Quantity.BED_ACTUAL));
    }

    @Test
    void whatIsNoNumberChangesNothingAndNullIsUnknown() throws ConfigException {
        Config config = config(READINGS);
        PrinterStatus before = heard(config, "{\"speed\": 120}");
        StatusReader reader = new StatusReader(config.bindings());
        PrinterStatus after =
                reader.read(before, TOPIC, "{\"speed\": \"fast\"}".getBytes(StandardCharsets.UTF_8), SECOND);
        assertEquals(120, after.own("print_speed").value());
        after = reader.read(before, TOPIC, "{\"speed\": null}".getBytes(StandardCharsets.UTF_8), SECOND);
        assertTrue(Double.isNaN(after.own("print_speed").value()));
    }

    /** With a range a layer needs no bounds, and a cue uses the reported value. */
    @Test
    void lightFollowsThem() throws ConfigException {
        Config config = config(READINGS + LOOK);
        Chain chain = Chain.of(config);
        Frame frame = new Frame(config.setup().stripBytes(), 0);
        chain.make(PrinterStatus.nothingHeard().withOwn("print_speed", 160, 0), 10 * SECOND, frame);
        assertEquals("busy", chain.look());
        chain.make(PrinterStatus.nothingHeard().withOwn("print_speed", 160, 0), 20 * SECOND, frame);
        assertEquals(255, frame.strip()[3 * 7] & 0xFF, "160 of 200 are eight of ten pixels");
        assertEquals(0, frame.strip()[3 * 8] & 0xFF);
        chain.make(PrinterStatus.nothingHeard().withOwn("print_speed", 140, 20 * SECOND), 21 * SECOND, frame);
        assertNotEquals("busy", chain.look());
    }

    @Test
    void aRangeMayRunBackwards() throws ConfigException {
        Config config =
                config(READINGS + "[looks.idle]\nlayers = [{ colour = \"white\", opacity_by = \"box.humidity\" }]\n");
        Chain chain =
                Chain.of(config.setup(), config.light().showing(config.looks().get("idle")), config.framesPerSecond());
        Frame frame = new Frame(config.setup().stripBytes(), 0);
        chain.make(PrinterStatus.nothingHeard().withOwn("box.humidity", 60, 0), SECOND, frame);
        assertEquals(0, frame.strip()[0] & 0xFF);
        chain.make(PrinterStatus.nothingHeard().withOwn("box.humidity", 10, SECOND), 10 * SECOND, frame);
        assertEquals(255, frame.strip()[0] & 0xFF);
    }

    @Test
    void percentPermilleAndShareHaveARange() throws ConfigException {
        Config config = config("""
                [printer.readings]
                a = { topic = "t", unit = "percent" }
                b = { topic = "t", unit = "permille" }
                c = { topic = "t", unit = "share" }
                d = { topic = "t", unit = "rpm" }
                """);
        assertEquals(
                List.of(
                        new OwnQuantity("a", "percent", 0, 100),
                        new OwnQuantity("b", "permille", 0, 1000),
                        new OwnQuantity("c", "share", 0, 1),
                        new OwnQuantity("d", "rpm", Double.NaN, Double.NaN)),
                List.copyOf(config.bindings().own().keySet()));
    }

    @Test
    void areRecordedAndPlayedBack() throws StatusLines.BadLineException {
        PrinterStatus before = PrinterStatus.nothingHeard().withOwn("print_speed", 100, SECOND);
        PrinterStatus after =
                before.withOwn("box.humidity", 35.5, 2 * SECOND).withOwn("print_speed", Double.NaN, 3 * SECOND);
        List<String> lines = new ArrayList<>(
                StatusLines.between(Statuses.of(PrinterStatus.nothingHeard()), Statuses.of(before), 60, 0));
        lines.addAll(StatusLines.between(Statuses.of(before), Statuses.of(after), 180, 0));
        assertEquals("{\"tick\":180,\"at_s\":3,\"own_readings\":{\"print_speed\":null}}", lines.get(lines.size() - 1));
        PrinterStatus played = PrinterStatus.nothingHeard();
        for (String line : lines) {
            played = StatusLines.read(line, played).status();
        }
        assertEquals(after.own("print_speed"), played.own("print_speed"));
        assertEquals(after.own("box.humidity"), played.own("box.humidity"));
    }

    @Test
    void aRecordingWithSomethingElseThanANumberIsRefused() {
        StatusLines.BadLineException e = assertThrows(
                StatusLines.BadLineException.class,
                () -> StatusLines.read(
                        "{\"at_s\": 1, \"own_readings\": {\"print_speed\": \"fast\"}}", PrinterStatus.nothingHeard()));
        assertEquals("has \"fast\" for print_speed; write a number, or null for unknown", e.getMessage());
    }

    @Test
    void checkMovesThemThroughTheirRange() throws ConfigException {
        List<PrinterStatus> made = MadeUpStatus.all(config(READINGS).bindings());
        assertTrue(Double.isNaN(made.get(0).own("print_speed").value()));
        assertEquals(0, made.get(4).own("print_speed").value());
        assertEquals(200, made.get(made.size() - 1).own("print_speed").value());
        assertEquals(10, made.get(made.size() - 1).own("box.humidity").value());
    }

    @Test
    void aConfigurationWithThemIsAValue() throws ConfigException {
        assertEquals(config(READINGS + LOOK), config(READINGS + LOOK));
        Config other = config(READINGS.replace("[0, 200]", "[0, 150]") + LOOK);
        assertNotEquals(config(READINGS + LOOK).light(), other.light());
        assertNotEquals(config(READINGS + LOOK).talk(), other.talk());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            bde.actual_C = { topic = "t" }                        | printer.readings.bde.actual_C: is not a known reading; did you mean bed.actual_C?
            humidity = { topic = "t" }                            | printer.readings.humidity: is not a known reading; give it a unit or a range, such as range = [0, 100], if it is a reading of your own
            still_hot = { topic = "t", unit = "percent" }         | printer.readings.still_hot: is the name of a signal that Lampwright calculates; choose another name
            a = { topic = "t", range = [5, 5] }                   | printer.readings.a.range: has the same value twice; give two that differ, what counts as 0 and what counts as 1, for instance [0, 200]
            a = [{ topic = "t" }]                                  | printer.readings.a: is not a known reading; give it a unit or a range, such as range = [0, 100], if it is a reading of your own
            a = { topic = "t", range = [5] }                      | printer.readings.a.range: has 1 values; give two that differ, what counts as 0 and what counts as 1, for instance [0, 200]
            a = { unit = "g" }                                    | printer.readings.a.topic: is missing; give the MQTT topic, for instance "shop/alder/heat"
            a = { topic = "t", unit = "g", offse = 1 }            | printer.readings.a.offse: is not known; did you mean offset?
            a = { topic = "t", unit = "grams of filament left" }  | printer.readings.a.unit: is longer than 20 characters; give at most 20 characters, for instance "percent", "mm/s" or "rpm"
            bed.actual = { topic = "t", unit = "g" }              | printer.readings.bed.actual: is not known; did you mean actual_C?
            """)
    void saysWhatIsWrong(String line, String mistake) {
        ConfigException e = assertThrows(
                ConfigException.class,
                () -> config("[printer.readings]\nok = { topic = \"t\", unit = \"g\" }\n" + line));
        List<String> mistakes = e.mistakes().stream().map(Mistake::toString).toList();
        assertEquals(List.of("t.toml:7: " + mistake), mistakes);
    }

    @Test
    void aLayerThatFollowsOneWithoutARangeSaysFromAndTo() {
        ConfigException e = assertThrows(
                ConfigException.class,
                () -> config(READINGS
                        + "[looks.x]\nlayers = [{ colour = \"red\", extent = \"bar\", by = \"filament_left\" }]\n"));
        assertTrue(
                e.getMessage()
                        .contains("looks.x.layers.0.from: is missing, and filament_left does not run from 0 to 1"),
                e.getMessage());
    }
}
