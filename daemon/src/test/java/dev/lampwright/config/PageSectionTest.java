package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Mounting.Corner;
import dev.lampwright.config.Mounting.SeenAs;
import dev.lampwright.config.Mounting.Shape;
import dev.lampwright.config.Mounting.Side;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The section {@code [page]}, and how {@code [strip]} describes the strip's mounting. */
class PageSectionTest {
    private static final String FILE = """
            broker.url = "mqtt://alder"
            printer.state = { topic = "shop/alder/job", printing = ["RUN"] }
            controller.port = "/dev/ttyACM0"
            strip.pixels = 60
            """;

    private static Config read(String lines) {
        try {
            return ConfigFile.read(FILE + lines + '\n', "t.toml");
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
    }

    private static String complaint(String lines) {
        List<Mistake> mistakes = assertThrows(
                        ConfigException.class, () -> ConfigFile.read(FILE + lines + '\n', "t.toml"))
                .mistakes();
        assertEquals(1, mistakes.size(), mistakes.toString());
        return mistakes.get(0).toString();
    }

    @Test
    void withoutTheSectionThereIsNoPage() {
        assertEquals(Optional.empty(), read("").page());
    }

    @Test
    void anEmptySectionIsAPageForThisMachineAlone() {
        PageSettings page = read("[page]").page().orElseThrow();
        assertTrue(page.address().isLoopbackAddress());
        assertEquals(61_117, page.port());
        assertEquals(Optional.empty(), page.tokenFile());
        assertEquals(32, page.viewers());
        assertFalse(page.tls());
    }

    @Test
    void aTokenForWatchingAloneTakesOneForTheRest() {
        assertEquals(
                "t.toml:5: page.view_token_file: lets people watch only, and without a token_file everybody may ask;"
                        + " name a token_file too, or leave view_token_file out",
                complaint("page.view_token_file = \"view-token\""));
    }

    @Test
    void everyKeyCounts() {
        PageSettings page = read("""
                [page]
                address = "0.0.0.0"
                port = 0
                token_file = "page-token"
                view_token_file = "view-token"
                hosts = ["Alder.local"]
                viewers = 3
                tls = true
                """).page().orElseThrow();
        assertTrue(page.address().isAnyLocalAddress());
        assertEquals(0, page.port());
        assertEquals(Optional.of(Path.of("page-token").toAbsolutePath()), page.tokenFile());
        assertEquals(Optional.of(Path.of("view-token").toAbsolutePath()), page.viewTokenFile());
        assertTrue(page.tls());
        assertEquals(List.of("alder.local"), page.hosts());
        assertEquals(3, page.viewers());
    }

    @ParameterizedTest
    @CsvSource({
        "0.0.0.0, false",
        "::, false",
        "192.168.1.7, false",
        "127.0.0.1, true",
        "127.9.9.9, true",
        "::1, true",
    })
    void whoOpensItToOthersHasToNameAToken(String address, boolean fine) {
        String lines = "page.address = \"" + address + "\"";
        if (fine) {
            read(lines);
        } else {
            assertTrue(complaint(lines).contains("page.address: lets other machines reach the page"), complaint(lines));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "address = \"alder.local\", page.address: is \"alder.local\"",
        "address = \"1.2.3\", page.address: is \"1.2.3\"",
        "address = \"300.1.1.1\", page.address: is \"300.1.1.1\"",
        "port = 65536, page.port: is 65536",
        "viewers = 0, page.viewers: is 0",
        "hosts = [\"a b\"], page.hosts: has \"a b\" in it",
        "colour = \"red\", page.colour: is not known",
    })
    void mistakesAreTold(String line, String told) {
        assertTrue(complaint("page." + line).contains(told), complaint("page." + line));
    }

    @Test
    void aStripIsStraightUnlessItSaysOtherwise() {
        assertEquals(
                new Mounting(Shape.STRAIGHT, List.of(), Corner.BOTTOM_LEFT, true, SeenAs.DOTS, Map.of()),
                read("").mounting());
    }

    @Test
    void aFrameHasItsSides() {
        Mounting mounting = read("""
                strip.shape = "frame"
                strip.sides_px = [20, 10, 20, 10]
                strip.begins = "top right"
                strip.clockwise = false
                """).mounting();
        assertEquals(
                new Mounting(Shape.FRAME, List.of(20, 10, 20, 10), Corner.TOP_RIGHT, false, SeenAs.DOTS, Map.of()),
                mounting);
    }

    @Test
    void lightsHangAboveUnlessTheySayOtherwiseAndADiffuserIsTold() {
        Mounting mounting = read("""
                strip.seen_as = "line"
                dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
                dimmers.spare = { channel = 1, unused = true }
                dimmers.foot = { channel = 2, volts = 24, full_mA = 800, hangs = "below" }
                """).mounting();
        assertEquals(SeenAs.LINE, mounting.seenAs());
        assertEquals(Map.of("work", Side.ABOVE, "foot", Side.BELOW), mounting.lamps());
    }

    @Test
    void aRingMayRunTheOtherWay() {
        Mounting mounting =
                read("strip.shape = \"ring\"\nstrip.clockwise = false").mounting();
        assertEquals(Shape.RING, mounting.shape());
        assertFalse(mounting.clockwise());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "strip.shape = \"star\" | give one of \"straight\", \"frame\", \"ring\"",
                "strip.shape = \"frame\" | strip.sides_px: is missing, which a frame needs",
                "strip.shape = \"frame\"; strip.sides_px = [1, 2] | strip.sides_px: has 2 sides with 3 pixels together, and the strip has 60",
                "strip.sides_px = [30, 30] | strip.sides_px: does not apply here; remove it; it goes with shape = \"frame\"",
                "strip.clockwise = true | strip.clockwise: does not apply here",
                "strip.seen_as = \"haze\" | give one of \"dots\", \"line\"",
            })
    void mistakesOfShapeAreTold(String lines, String told) {
        String file = lines.replace("; ", "\n");
        assertTrue(complaint(file).contains(told), complaint(file));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"[12, 12, 12, 12, 12]", "[30.5, 29.5]"})
    void aFrameHasFourWholeSidesAtMost(String sides) {
        assertTrue(
                complaint("strip.shape = \"frame\"\nstrip.sides_px = " + sides).contains("strip.sides_px: has "));
    }
}
