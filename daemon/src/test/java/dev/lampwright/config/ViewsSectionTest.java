package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Several printers and their views, and what may be wrong about them. */
class ViewsSectionTest {
    private static final String GOOD = """
            broker.url = "mqtt://127.0.0.1"
            controller.port = "/dev/ttyACM0"
            strip.pixels = 31
            [printers.alder]
            readings.job.progress.topic = "shop/alder/job"
            [printers.birch]
            readings.job.progress.topic = "shop/birch/job"
            """;

    private static List<String> mistakes(String text) {
        return assertThrows(ConfigException.class, () -> ConfigFile.read(text, "t.toml")).mistakes().stream()
                .map(Mistake::toString)
                .toList();
    }

    private static void assertOnly(String mistake, String more) {
        assertEquals(List.of("t.toml:" + mistake), mistakes(more.startsWith("[") ? GOOD + more : more + GOOD));
    }

    @Test
    void withoutViewsEachPrinterHasAnEqualShare() throws ConfigException {
        Config config = ConfigFile.read(GOOD, "t.toml");
        assertEquals(
                Map.of("alder", "0-15", "birch", "16-30"),
                Map.of(
                        config.light().views().get(0).name(),
                        config.light().views().get(0).pixels().toString(),
                        config.light().views().get(1).name(),
                        config.light().views().get(1).pixels().toString()));
        assertEquals(
                List.of("shop/alder/job", "shop/birch/job"), config.bindings().topicFilters());
    }

    @Test
    void aPrinterMayHaveTwoViewsAndAViewAnyName() throws ConfigException {
        Config config = ConfigFile.read(GOOD + """
                [views]
                alder.pixels = "0-9"
                birch.pixels = "10-19"
                door = { pixels = "20-29", printer = "alder" }
                """, "t.toml");
        assertEquals(0, config.light().views().get(2).printer());
        assertEquals("20-29", config.fitting().zones().get("door").toString());
    }

    @Test
    void viewsThatOverlap() {
        assertOnly(
                "2: views.birch.pixels: has pixel 9, which views.alder has already; give each view pixels of its own",
                "views.alder.pixels = \"0-9\"\nviews.birch.pixels = \"9-20\"\n");
    }

    @Test
    void placesThatAreNotThere() {
        assertOnly(
                "2: views.birch.pixels: is \"20-31\", past the end of the strip; stay within 0-30, or correct strip.pixels",
                "views.alder.pixels = \"0-9\"\nviews.birch.pixels = \"20-31\"\n");
        assertOnly(
                "2: views.birch.pixels: is missing; give the view's pixels on the strip, for instance \"0-29\"",
                "views.alder.pixels = \"0-9\"\nviews.birch.printer = \"birch\"\n");
        assertOnly(
                "2: views.birch.pixels: is mirrored, which a view cannot be; mirror the zones of the view instead",
                "views.alder.pixels = \"0-9\"\nviews.birch.pixels = \"20-30 mirrored\"\n");
        assertOnly(
                "2: views.birch.zones.bed: has pixel 9, which is not in the view; stay within 10-30; pixels are counted along the whole strip",
                "views.alder.pixels = \"0-8\"\nviews.birch = { pixels = \"10-30\", zones = { bed = \"9-15\" } }\n");
    }

    @Test
    void namesOfPrinters() {
        assertOnly(
                "2: views.brich: is not the name of a printer; did you mean birch? Or give printer = \"alder\" or \"birch\"",
                "views.alder.pixels = \"0-9\"\nviews.brich.pixels = \"10-20\"\n");
        assertOnly(
                "2: views.b.printer: is \"bich\", which is not a known printer; did you mean \"birch\"?",
                "views.alder.pixels = \"0-9\"\nviews.b = { pixels = \"10-20\", printer = \"bich\" }\n");
        assertOnly(
                "6: printers.birch: has no view; add [views.birch] with its pixels, or remove the printer",
                "[views]\nalder.pixels = \"0-9\"\n");
        assertOnly(
                "8: printers.bed: is what the names of signals begin with; choose another name",
                "[printers.bed]\nreadings.job.progress.topic = \"shop/bed\"\n");
        assertOnly(
                "8: printers.\"two words\": is not a name for a printer; begin with a letter, then letters, digits, - and _, 40"
                        + " characters at most",
                "[printers.\"two words\"]\nreadings.job.progress.topic = \"shop/bed\"\n");
        assertOnly(
                "8: printer: cannot be used together with printers; give that printer a name, too: [printers.NAME] with its keys"
                        + " below",
                "[printer]\nreadings.job.progress.topic = \"shop/bed\"\n");
        assertOnly(
                "8: printers.rowan.readings: is missing or empty, and so is printers.rowan.state; say where the printer reports"
                        + " something, for instance bed.actual_C = { topic = \"shop/alder/heat\", at = \"/plate/now\" }",
                "[printers.rowan]\nambient_C = 20\n");
    }

    @Test
    void namesOfZonesAndLights() {
        assertOnly(
                "1: views.plate: is the name of a zone; choose another name for one of them",
                "views.plate = { pixels = \"0-9\", printer = \"alder\" }\nviews.birch.pixels = \"10-20\"\nzones.plate = \"0-3\"\n");
        assertOnly(
                "1: zones.bed: is one for all, but each view has its own; move it to zones of a view: [views.alder.zones]",
                "zones.bed = \"0-3\"\n");
        assertOnly("1: views.alder.lights: has \"wrok\" in it, which is not a dimmer; did you mean \"work\"?", """
                views.alder = { pixels = "0-9", lights = ["wrok"] }
                views.birch.pixels = "10-20"
                dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
                """);
        assertOnly(
                "1: dimmers.glow: is a plain colour strip that no view has; name it in the lights of one, for instance"
                        + " views.alder.lights = [\"glow\"]",
                "dimmers.glow = { channels = [0, 1, 2], volts = 12, full_mA = 300 }\n");
    }

    @Test
    void tooManyForTheStrip() {
        assertEquals(
                List.of(
                        "t.toml:4: printers: are 2, more than the strip has pixels; name fewer, or correct strip.pixels"),
                mistakes(GOOD.replace("31", "1")));
    }

    @Test
    void readingsOfOneNameAreAlike() {
        assertEquals(
                1,
                mistakes(GOOD + """
                        [printers.alder.readings.print_speed]
                        topic = "shop/alder/speed"
                        range = [0, 100]
                        [printers.birch.readings.print_speed]
                        topic = "shop/birch/speed"
                        range = [0, 200]
                        """).stream()
                        .filter(line -> line.contains("another unit or range"))
                        .count());
    }

    @Test
    void viewsOfAPrinterWithoutAName() {
        assertEquals(
                List.of(
                        "t.toml:4: views: does not apply here; name the printers: [printers.NAME] in place of [printer]"),
                mistakes("""
                        broker.url = "mqtt://127.0.0.1"
                        controller.port = "/dev/ttyACM0"
                        strip.pixels = 31
                        views.alder.pixels = "0-9"
                        [printer]
                        readings.job.progress.topic = "shop/alder/job"
                        """));
    }

    @Test
    void cuesAndSignals() {
        assertOnly(
                "1: cues.0.state: is \"alder.prnting\", which is not a known state; did you mean \"alder.printing\"?",
                "cues = [{ state = \"alder.prnting\", look = \"done\" }]\n");
        assertOnly(
                "1: cues.0.view: is \"brich\", which is not a known view; did you mean \"birch\"?",
                "cues = [{ view = \"brich\", look = \"done\" }]\n");
        assertOnly(
                "1: cues.0.signal: is \"birch.bed.het\", which is not a known signal; did you mean \"birch.bed.heat\"?",
                "cues = [{ signal = \"birch.bed.het\", above = 0.5, look = \"done\" }]\n");
    }
}
