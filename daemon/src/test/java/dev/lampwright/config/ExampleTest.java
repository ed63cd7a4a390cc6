package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.broker.Broker;
import dev.lampwright.look.Fitting;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The commented example means what it says. */
class ExampleTest {
    private static Config config;

    @BeforeAll
    static void readExample() throws IOException, ConfigException {
        try (InputStream in = ConfigFile.class.getResourceAsStream("example.toml")) {
            config = ConfigFile.read(new String(in.readAllBytes(), StandardCharsets.UTF_8), "example.toml");
        }
    }

    @Test
    void broker() {
        URI url = URI.create("mqtt://127.0.0.1:1883");
        assertEquals(new Broker(url, Optional.empty(), Optional.empty(), Optional.empty()), config.broker());
    }

    @Test
    void printer() {
        assertEquals(Duration.ofSeconds(20), config.light().printers().get(0).silentAfter());
        assertEquals(22, config.light().room().ambientC());
        assertEquals(43, config.light().room().hotAboveC());
        assertEquals(
                PayloadPath.at("/phase"),
                config.bindings().states().get(0).source().path());
        assertEquals(
                "shop/alder/job", config.bindings().states().get(0).source().topicFilter());
    }

    @Test
    void statesInTheOrderOfTheFile() {
        Map<PrinterState, List<String>> words =
                config.bindings().states().get(0).words();
        assertEquals(
                List.of(
                        PrinterState.IDLE,
                        PrinterState.WARMING,
                        PrinterState.PRINTING,
                        PrinterState.HELD,
                        PrinterState.DONE,
                        PrinterState.STOPPED,
                        PrinterState.FAULT),
                List.copyOf(words.keySet()));
        assertEquals(List.of("ALARM*"), words.get(PrinterState.FAULT));
    }

    @Test
    void will() {
        Source link = new Source("shop/alder/link", PayloadPath.BARE);
        assertEquals(
                Optional.of(new Bindings.OfWill(link, List.of("offline"))),
                config.bindings().will());
    }

    @Test
    void readings() {
        assertEquals(
                Map.of(
                        Quantity.BED_ACTUAL, heat("/plate/now"),
                        Quantity.BED_SETPOINT, heat("/plate/set"),
                        Quantity.NOZZLE_ACTUAL, heat("/tip/now"),
                        Quantity.NOZZLE_SETPOINT, heat("/tip/set"),
                        Quantity.JOB_PROGRESS,
                                List.of(new Bindings.OfReading(
                                        new Source("shop/alder/job", PayloadPath.at("/percent")), Unit.PERCENT, 1, 0))),
                config.bindings().readings());
    }

    private static List<Bindings.OfReading> heat(String pointer) {
        return List.of(new Bindings.OfReading(new Source("shop/alder/heat", PayloadPath.at(pointer))));
    }

    @Test
    void fitted() {
        Setup fitted = new Setup(
                30,
                "GRB",
                List.of(12_000, 12_000, 12_000),
                1000,
                0,
                3000,
                WhenSilent.BEACON,
                List.of(1500, 900, 800),
                List.of(
                        new Setup.Dimmer(2, 800, 0),
                        new Setup.Dimmer(1, 300, 0),
                        new Setup.Dimmer(1, 300, 0),
                        new Setup.Dimmer(1, 300, 0)));
        assertEquals(fitted, config.setup());
        assertEquals("/dev/ttyACM0", config.controller().port());
        assertEquals(500_000, config.controller().baud());
        assertEquals(60, config.framesPerSecond());
    }

    @Test
    void zonesAndDimmers() {
        Map<String, String> zones = new LinkedHashMap<>();
        config.fitting().zones().forEach((name, zone) -> zones.put(name, zone.toString()));
        assertEquals(
                Map.of(
                        "strip", "0-29",
                        "bed", "0-9",
                        "nozzle", "10-19",
                        "job", "29-20",
                        "sides", "0-9 + 29-20 mirrored",
                        "glow", "30",
                        "plain", "30"),
                zones);
        assertEquals(List.of("strip", "bed", "nozzle", "job", "sides", "glow", "plain"), List.copyOf(zones.keySet()));
        assertEquals(
                List.of(
                        Fitting.DimmerUse.white("work"),
                        new Fitting.DimmerUse("glow", 30, 0),
                        new Fitting.DimmerUse("glow", 30, 1),
                        new Fitting.DimmerUse("glow", 30, 2)),
                config.fitting().dimmers());
    }

    @Test
    void lookAndCue() {
        assertEquals(11, config.looks().size());
        assertEquals("preheat", config.cues().get(0).look().name());
        assertTrue(config.looks().get("preheat").steadyForCamera());
    }

    @Test
    void whatIsInCommentsIsUnderstoodToo() throws ConfigException {
        String text = KeyExample.text();
        int more = text.indexOf("# [looks.more]");
        String layers = text.substring(more, text.indexOf("# ]", more) + 3).replaceAll("(?m)^# ", "");
        Config all = ConfigFile.read(text.substring(0, more) + layers + "\n" + text.substring(more), "example.toml");
        assertEquals(6, all.looks().get("more").layers().size());
    }

    @Test
    void event() {
        Bindings.OfEvent camera = config.bindings().events().get("camera");
        assertEquals(
                new Bindings.OfEvent(
                        new Source("shop/alder/camera", PayloadPath.BARE),
                        List.of("SNAP"),
                        List.of("SNAPPED"),
                        Duration.ofSeconds(10)),
                camera);
    }
}
