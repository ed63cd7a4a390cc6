package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every kind of mistake in looks, cues, events, zones, dimmers and the strip's colours is reported with its line and key. */
class LightMistakesTest {
    /** A good file of nine lines. */
    private static final String GOOD = """
            broker.url = "mqtt://alder"
            printer.state.topic = "shop/alder/job"
            printer.state.printing = ["RUN"]
            controller.port = "/dev/ttyACM0"
            strip.pixels = 30
            [printer.events]
            camera = { topic = "shop/alder/camera", begin = ["SNAP"], end = ["DONE"] }
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            """;

    private static List<String> mistakes(String text) {
        return assertThrows(ConfigException.class, () -> ConfigFile.read(text, "t.toml")).mistakes().stream()
                .map(Mistake::toString)
                .toList();
    }

    private static void assertOnly(String beginning, String text) {
        List<String> mistakes = mistakes(text);
        assertEquals(1, mistakes.size(), mistakes.toString());
        assertTrue(mistakes.get(0).startsWith("t.toml:" + beginning), mistakes.toString());
    }

    /** The only mistake in a look of one layer, which is on line 11. */
    private static void assertLayer(String beginning, String layer) {
        String text = GOOD + "[looks.warm]\nlayers = [{ " + layer + " }]\n";
        assertOnly("11: looks.warm.layers.0." + beginning, text);
    }

    /** The only mistake in a look, which is on line 11. */
    private static void assertLook(String beginning, String keys) {
        assertOnly("11: looks.warm" + beginning, GOOD + "[looks]\nwarm = { " + keys + " }\n");
    }

    /** The only mistake in a cue, which is on line 1. */
    private static void assertCue(String beginning, String keys) {
        assertOnly("1: cues.0." + beginning, "cues = [{ " + keys + " }]\n" + GOOD);
    }

    /** The only mistake in one more line at the beginning. */
    private static void assertAdded(String beginning, String line) {
        assertOnly("1: " + beginning, line + "\n" + GOOD);
    }

    @Test
    void noneInTheGoodFile() throws ConfigException {
        assertEquals(10, ConfigFile.read(GOOD, "t.toml").looks().size());
    }

    @Test
    void namesOfLayers() {
        assertLayer(
                "zone: is \"nozle\", which is not a known zone; did you mean \"nozzle\"?",
                "zone = \"nozle\", colour = \"red\"");
        assertLayer(
                "zone: is \"roof\", which is not a known zone; give one of \"strip\", \"bed\", \"nozzle\", \"job\"",
                "zone = \"roof\", colour = \"red\"");
        assertLayer("zone: is 3, not text; give the name of a zone", "zone = 3, colour = \"red\"");
        assertLayer(
                "paint: is \"paste\"; give one of \"solid\", \"ramp\", \"scale\", \"palette\", \"ember\"",
                "paint = \"paste\", colour = \"red\"");
        assertLayer("extent: is \"half\"; give one of \"all\", \"bar\", ", "extent = \"half\", colour = \"red\"");
        assertLayer(
                "blend: is \"glue\"; give one of \"normal\", \"plus-lighter\", ", "blend = \"glue\", colour = \"red\"");
    }

    @Test
    void colours() {
        assertLayer("colour: is missing; give a CSS colour", "paint = \"solid\"");
        assertLayer("colour: \"orng\" is not a CSS colour: ", "colour = \"orng\"");
        assertLayer("colour: is 5, not text; give a CSS colour", "colour = 5");
        assertLayer("colours: is missing; give two CSS colours or more", "paint = \"ramp\"");
        assertLayer("colours: has one colour; give two", "paint = \"ramp\", colours = [\"red\"]");
        assertLayer("colours: is empty; give two", "paint = \"ramp\", colours = []");
        assertLayer("colours: \"orng\" is not a CSS colour: ", "paint = \"ramp\", colours = [\"red\", \"orng\"]");
        assertLayer("colours: has 5 in it; give two", "paint = \"ramp\", colours = [\"red\", 5, \"blue\"]");
    }

    @Test
    void gradients() {
        String ramp = "paint = \"ramp\", colours = [\"red\", \"blue\"], ";
        assertLayer(
                "interpolation: \"hsl\" is not a way between colours; write one of ", ramp + "interpolation = \"hsl\"");
        assertLayer("steps: is 1; give true or false", ramp + "steps = 1");
        assertLayer(
                "interpolation: cannot be combined with steps = true; remove one",
                ramp + "steps = true, interpolation = \"oklab\"");
        assertLayer("stops: has 3 places for 2 colours; give one", ramp + "stops = [0, 0.5, 1]");
        assertLayer("stops: goes back; give places that rise", ramp + "stops = [0.5, 0.2]");
        assertLayer("stops: is 2; give a number from 0 to 1", ramp + "stops = [0.5, 2]");
        assertLayer("stops: is 0.5; give numbers in an array", ramp + "stops = 0.5");
    }

    @Test
    void signals() {
        String bar = "colour = \"red\", extent = \"bar\", ";
        assertLayer("by: is missing; give the signal to follow", "colour = \"red\", extent = \"bar\"");
        assertLayer(
                "by: is \"bed.heta\", which is not a known signal; did you mean \"bed.heat\"?",
                bar + "by = \"bed.heta\"");
        assertLayer(
                "by: is \"speed\", which is not a known signal; give one of \"bed.heat\", ", bar + "by = \"speed\"");
        assertLayer(
                "from: is missing, and bed.actual_C does not run from 0 to 1 by itself; give the value",
                bar + "by = \"bed.actual_C\", to = 60");
        assertLayer("to: is missing, and job.left_s does not", bar + "by = \"job.left_s\", from = 60");
        assertLayer("to: is the same as from; give two", bar + "by = \"job.left_s\", from = 60, to = 60");
        assertLayer("from: is \"a\"; give a number", bar + "by = \"bed.heat\", from = \"a\"");
        assertLayer(
                "opacity_from: is missing, and bed.actual_C does not",
                "colour = \"red\", opacity_by = \"bed.actual_C\", opacity_to = 3");
    }

    /** A wrong signal that both paint and extent follow is reported once. */
    @Test
    void aMistakeIsToldOnce() {
        assertLayer(
                "by: is \"x\", which is not a known signal; ",
                "paint = \"scale\", colours = [\"red\", \"blue\"], extent = \"bar\", by = \"x\"");
    }

    @ParameterizedTest
    @CsvSource({
        "width_px, 0, 0.1 to 65535",
        "tail_px, -1, 0 to 65535",
        "repeat_px, 0.5, 1 to 65535",
        "softness_px, -1, 0 to 65535",
        "speed_px_per_s, 1001, -1000 to 1000",
        "speed_zones_per_s, -3, -2 to 2",
        "cycle_s, 86401, -86400 to 86400",
        "opacity, 1.1, 0 to 1"
    })
    void numbersOfBands(String key, String value, String range) {
        assertLayer(
                key + ": is " + value + "; give a number from " + range,
                "colour = \"red\", extent = \"band\", " + key + " = " + value);
    }

    @ParameterizedTest
    @CsvSource({
        "density, 1.5, a number from 0 to 1",
        "glint_s, 0.05, a number from 0.1 to 600",
        "seed, -1, a whole number from 0 to 2147483647"
    })
    void numbersOfGrains(String key, String value, String range) {
        assertLayer(
                key + ": is " + value + "; give " + range,
                "colour = \"red\", extent = \"grains\", " + key + " = " + value);
    }

    @ParameterizedTest
    @CsvSource({
        "brightest_K, 999, 1000 to 10000",
        "strike_K, 0, 1 to 10000",
        "strikes_per_px_s, 61, 0 to 60",
        "diffusion_px2_per_s, 31, 0 to 30",
        "time_constant_s, 0, 0.05 to 600"
    })
    void numbersOfEmbers(String key, String value, String range) {
        assertLayer(
                key + ": is " + value + "; give a number from " + range, "paint = \"ember\", " + key + " = " + value);
    }

    @Test
    void bandsAndTheirMovement() {
        String band = "colour = \"red\", extent = \"band\", ";
        assertLayer("cycle_s: is 0, less than 0.5 s; give the seconds", band + "cycle_s = 0");
        assertLayer(
                "cycle_s: is a second movement in addition to speed_px_per_s; keep one",
                band + "cycle_s = 3, speed_px_per_s = 1");
        assertLayer(
                "repeat_px: is 4, shorter than the band of 5 pixels; give more",
                band + "repeat_px = 4, width_px = 2, tail_px = 3");
    }

    @Test
    void rhythms() {
        assertLayer("rhythm: \"Blip\" is not a valid rhythm; write one", "colour = \"red\", rhythm = \"Blip\"");
        assertLayer("rhythm: \"Fl\" is not a valid rhythm; it needs a period", "colour = \"red\", rhythm = \"Fl\"");
    }

    @Test
    void edgesAndPhases() {
        assertLayer(
                "edge_s: is 3, longer than the 0.5 s that it is lit or dark at least; give at most 0.5, or write \"swell 4s\"",
                "colour = \"red\", rhythm = \"on 0.5s off 2s\", edge_s = 3");
        assertLayer(
                "edge_s: is 0.188, longer than the 0.187 s that it is lit or dark at least; give at most 0.187, or",
                "colour = \"red\", rhythm = \"UQ\", edge_s = 0.188");
        assertLayer("edge_s: does not apply here; remove it; it goes with rhythm", "colour = \"red\", edge_s = 0");
        assertLayer(
                "edge_s: does not apply here; remove it; it goes with rhythm",
                "colour = \"red\", rhythm = \"swell 4s\", edge_s = 0");
        assertLayer("phase: does not apply here; remove it; it goes with rhythm", "colour = \"red\", phase = 0.5");
        assertLayer("phase: is 2; give a number from 0 to 1", "colour = \"red\", rhythm = \"Q\", phase = 2");
    }

    @Test
    void thresholds() {
        assertLayer(
                "full_above: is 40, below dark_below = 60; give more",
                "colour = \"red\", opacity_by = \"bed.actual_C\", dark_below = 60, full_above = 40");
        assertLayer(
                "dark_below: does not apply here; remove it; it goes with opacity_by",
                "colour = \"red\", dark_below = 60");
        assertLayer(
                "opacity_to: is missing, and bed.actual_C does not",
                "colour = \"red\", opacity_by = \"bed.actual_C\", dark_below = 60, opacity_from = 3");
    }

    @Test
    void backAndForth() {
        String band = "colour = \"red\", extent = \"band\", back_and_forth = true";
        assertLayer("back_and_forth: has no movement to turn; give cycle_s or a speed", band);
        assertLayer(
                "repeat_px: cannot be used together with back_and_forth; keep one",
                band + ", cycle_s = 3, repeat_px = 9");
        String ramp = "paint = \"ramp\", colours = [\"red\", \"blue\"], back_and_forth = true, cycle_s = 3";
        assertLayer("spread: is missing beside back_and_forth; give less than 1", ramp);
        assertLayer("spread: is 1 beside back_and_forth; give less than 1", ramp + ", spread = 1");
    }

    @Test
    void ringsAndPalettes() {
        String colours = "colours = [\"red\", \"blue\"]";
        assertLayer(
                "ring: cannot be combined with steps = true; remove it",
                "paint = \"ramp\", ring = true, steps = true, " + colours);
        assertLayer(
                "ring: does not apply here; remove it; it goes with paint = \"ramp\"",
                "paint = \"scale\", by = \"bed.heat\", ring = true, " + colours);
        assertLayer(
                "paint: is \"palette\", which is for grains; write extent = \"grains\" too",
                "paint = \"palette\", " + colours);
    }

    @Test
    void twoOpacities() {
        assertLayer(
                "opacity_by: cannot be used together with opacity; keep one",
                "colour = \"red\", opacity = 0.5, opacity_by = \"bed.heat\"");
    }

    /** What one paint or extent needs does not apply to another. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "colours = [\"red\", \"blue\"]",
                "interpolation = \"oklab\"",
                "steps = true",
                "stops = [0, 1]",
                "by = \"bed.heat\"",
                "from = 0",
                "to = 1",
                "speed_px_per_s = 1",
                "speed_zones_per_s = 1",
                "cycle_s = 1",
                "brightest_K = 1500",
                "strike_K = 200",
                "strikes_per_px_s = 1",
                "diffusion_px2_per_s = 1",
                "time_constant_s = 1",
                "seed = 1",
                "width_px = 1",
                "softness_px = 1",
                "tail_px = 1",
                "repeat_px = 1",
                "density = 0.5",
                "glint_s = 1",
                "opacity_from = 0",
                "opacity_to = 1"
            })
    void keysWithoutUse(String key) {
        String name = key.substring(0, key.indexOf(' '));
        assertLayer(name + ": does not apply here; remove it; it goes with ", "colour = \"red\", " + key);
    }

    @Test
    void keysWithoutUseTellWhatTheyGoWith() {
        assertLayer(
                "colour: does not apply here; remove it; it goes with paint = \"solid\"",
                "paint = \"ember\", colour = \"red\"");
        assertLayer(
                "tail_px: does not apply here; remove it; it goes with extent = \"band\"",
                "colour = \"red\", extent = \"pointer\", by = \"bed.heat\", tail_px = 2");
        assertLayer("hue: is not known; remove it; the keys here are: zone, ", "colour = \"red\", hue = 1");
        assertLayer("opacty: is not known; did you mean opacity?", "colour = \"red\", opacty = 1");
    }

    @Test
    void looks() {
        assertLook(".layers: is missing or empty, and so is dimmers; ", "");
        assertLook(".layers: is 5; give an array of tables: [[looks.warm.layers]]", "layers = 5");
        assertLook(".layers.1: is \"red\"; give a table", "layers = [{ colour = \"red\" }, \"red\"]");
        assertLook(
                ".steady_for_camera: is \"no\"; give true or false",
                "layers = [{ colour = \"red\" }], steady_for_camera = \"no\"");
        assertLook(".like: is not known; ", "layers = [{ colour = \"red\" }], like = \"idle\"");
        assertAdded("looks: is 5; give a table: [looks]", "looks = 5");
    }

    @Test
    void dimmersOfLooks() {
        assertLook(".dimmers.wrok: is not a dimmer; did you mean work?", "dimmers = { wrok = 1 }");
        assertLook(".dimmers.lid: is not a dimmer; give one of work", "dimmers = { lid = 1 }");
        assertLook(".dimmers.work: is 2; give a number from 0 to 1", "dimmers = { work = 2 }");
        assertLook(".dimmers.work.by: is missing; ", "dimmers = { work = { from = 0 } }");
        assertLook(
                ".dimmers.work.by: is \"jb.progress\", which is not a known signal; did you mean \"job.progress\"?",
                "dimmers = { work = { by = \"jb.progress\" } }");
        assertLook(".dimmers.work.till: is not known; ", "dimmers = { work = { by = \"job.progress\", till = 1 } }");
        String bare = GOOD.replace("work =", "glow =").replace("channel = 0", "channels = [0, 1, 2]");
        assertOnly(
                "11: looks.warm.dimmers.glow: is a plain colour strip; light it by a layer: zone = \"glow\"",
                bare + "[looks]\nwarm = { dimmers = { glow = 1 } }\n");
        assertOnly(
                "11: looks.warm.dimmers.work: is not a dimmer; none is fitted; leave it out",
                bare + "[looks]\nwarm = { dimmers = { work = 1 } }\n");
    }

    @Test
    void cues() {
        assertCue("look: is missing; give the name", "state = \"idle\"");
        assertCue("look: is \"idel\", which is not a known look; did you mean \"idle\"?", "look = \"idel\"");
        assertCue("look: is \"x\", which is not a known look; give one of \"silent\", \"idle\"", "look = \"x\"");
        assertCue("look: is \"prining\", which is not a known look; did you mean \"printing\"?", "look = \"prining\"");
        assertCue(
                "state: is \"prining\", which is not a known state; did you mean \"printing\"?",
                "look = \"idle\", state = \"prining\"");
        assertCue("state: is \"hot\", which is not a known state; ", "look = \"idle\", state = [\"idle\", \"hot\"]");
        assertCue("state: is empty; give", "look = \"idle\", state = []");
        assertCue(
                "event: is \"camra\", which is not a known event; did you mean \"camera\"?",
                "look = \"idle\", event = \"camra\"");
        assertCue("easing: is \"slow\"; give one of \"linear\", ", "look = \"idle\", easing = \"slow\"");
        assertCue("fade_s: is -1; give a number from 0 to 600", "look = \"idle\", fade_s = -1");
        assertCue("fades: is not known; did you mean fade_s?", "look = \"idle\", fades = 1");
        assertAdded("cues: is a table; give an array of tables: [[cues]]", "cues = { look = \"idle\" }");
    }

    @Test
    void boundsOfCues() {
        assertCue("signal: is \"x\", which is not a known signal; ", "look = \"idle\", signal = \"x\", above = 1");
        assertCue("signal: needs above, below or both; ", "look = \"idle\", signal = \"bed.heat\"");
        assertCue(
                "below: is not more than above, so that the cue never holds; ",
                "look = \"idle\", signal = \"bed.heat\", above = 0.5, below = 0.5");
        assertCue("margin: is -1; ", "look = \"idle\", signal = \"bed.heat\", above = 0.5, margin = -1");
        assertCue(
                "above: does not apply here; remove it; it goes with signal",
                "look = \"idle\", state = \"idle\", above = 1");
        assertCue("margin: does not apply here; ", "look = \"idle\", state = \"idle\", margin = 1");
    }

    @Test
    void aFaultCutsIn() throws ConfigException {
        assertCue(
                "fade_s: is 1.5, but a fault cuts in at once; remove it",
                "look = \"idle\", state = [\"held\", \"fault\"], fade_s = 1.5");
        ConfigFile.read("cues = [{ look = \"idle\", state = \"fault\", fade_s = 0 }]\n" + GOOD, "t.toml");
    }

    @Test
    void aCueThatHidesThoseBelow() throws ConfigException {
        String cues = "cues = [{ look = \"idle\" }, { look = \"done\", state = \"done\" }]\n";
        assertOnly("1: cues.0.look: is always on, so that the cues below never are; ", cues + GOOD);
        ConfigFile.read("cues = [{ look = \"done\", state = \"done\" }, { look = \"idle\" }]\n" + GOOD, "t.toml");
    }

    @Test
    void anEventWithoutEventsFitted() {
        assertOnly(
                "1: cues.0.event: is \"camera\", which is not a known event; there is no event here; leave it out",
                "cues = [{ look = \"idle\", event = \"camera\" }]\n" + GOOD.replaceAll("(?m)^camera.*$", ""));
    }

    @Test
    void events() {
        String event = "printer.events.door.";
        String topic = "topic = \"shop/alder/door\"";
        String door = "printer.events.door = { ";
        String good = GOOD.replace("[printer.events]\ncamera", "[x]\ncamera").replaceAll("(?s)\\[x\\].*", "");
        assertOnly("1: " + event + "topic: is missing; ", door + "begin = [\"OPEN\"] }\n" + good);
        assertOnly("1: " + event + "begin: is missing; ", door + topic + " }\n" + good);
        assertOnly("1: " + event + "begin: is \"OPEN\"; ", door + topic + ", begin = \"OPEN\" }\n" + good);
        assertOnly(
                "1: " + event + "end: has \"open\", which begin has already; ",
                door + topic + ", begin = [\"OPEN\"], end = [\"open\"] }\n" + good);
        assertOnly(
                "1: " + event + "lasts_s: is 0; give a number from 0.1 to 86400",
                door + topic + ", begin = [\"OPEN\"], lasts_s = 0 }\n" + good);
        assertOnly("1: " + event + "at: is \"x\"", door + topic + ", begin = [\"OPEN\"], at = \"x\" }\n" + good);
    }

    @Test
    void zones() {
        assertAdded("zones.lid: has pixel 5 twice; name each pixel once", "zones.lid = \"0-9 + 5\"");
        assertAdded("zones.lid: is \"0-9 + 25-30\", past the end of the strip; ", "zones.lid = \"0-9 + 25-30\"");
        for (String wrong :
                List.of("mirrored", "0-9 +", "+ 0-9", "0-9 mirror", "0-9mirrored", "0-9 mirrored + 20-29")) {
            assertAdded("zones.lid: is \"" + wrong + "\"; give the first", "zones.lid = \"" + wrong + "\"");
        }
        assertAdded("zones.lid: is \"0-9 every\"; give the first", "zones.lid = \"0-9 every\"");
        assertAdded("zones.lid: is \"0 every 2\"; give the first", "zones.lid = \"0 every 2\"");
        assertAdded(
                "zones.lid: has \"0-9 every 1\" in it, which leaves out nothing; give a whole number of 2 or more",
                "zones.lid = \"0-9 every 1 + 20\"");
        assertAdded(
                "zones.lid: has \"20-15 every 6\" in it, which leaves out all but the first pixel; give",
                "zones.lid = \"20-15 every 6\"");
        assertAdded("zones.lid: has pixel 4 twice; name each pixel once", "zones.lid = \"0-9 every 2 + 4\"");
        assertAdded("zones.strip: is always the whole strip; choose another name", "zones.strip = \"0-9\"");
        assertAdded("zones.plain: is always what plain colour", "zones.plain = \"0-9\"");
    }

    @Test
    void plainColourStrips() {
        String entry = "volts = 12, full_mA = 300 }";
        String good = GOOD.replaceAll("(?s)\\[dimmers\\].*", "");
        String key = "dimmers.glow";
        assertOnly(
                "1: " + key + ".channels: is not three whole", key + " = { channels = [0, 1], " + entry + "\n" + good);
        assertOnly(
                "1: " + key + ".channels: is not three whole",
                key + " = { channels = [0, 1.5, 2], " + entry + "\n" + good);
        assertOnly(
                "1: " + key + ".channels: is 255; give", key + " = { channels = [0, 1, 255], " + entry + "\n" + good);
        assertOnly("1: " + key + ".channels: is 0; give numbers", key + " = { channels = 0, " + entry + "\n" + good);
        assertOnly(
                "1: " + key + ".channel: cannot be used together with channels; ",
                key + " = { channel = 0, channels = [0, 1, 2], " + entry + "\n" + good);
        assertOnly(
                "1: " + key + ": has channel 1, which glow has already; ",
                key + " = { channels = [0, 1, 1], " + entry + "\n" + good);
        assertOnly(
                "1: dimmers.strip: is the name of a zone that is always there; ",
                "dimmers.strip = { channels = [0, 1, 2], " + entry + "\n" + good);
        assertOnly(
                "2: zones.glow: is the zone of the plain colour strip dimmers.glow; ",
                key + " = { channels = [0, 1, 2], " + entry + "\nzones.glow = \"0-9\"\n" + good);
    }

    private static void assertStrip(String beginning, String keys) {
        assertOnly(
                "1: strip." + beginning,
                "strip = { pixels = 30, " + keys + " }\n" + GOOD.replace("strip.pixels = 30", ""));
    }

    @Test
    void coloursOfTheStrip() {
        assertStrip("gains: has 2 numbers, not 3; give one from 0.01 to 1 for each", "gains = [1, 1]");
        assertStrip("gains: is 0; give a number from 0.01 to 1", "gains = [1, 0, 1]");
        assertStrip("gains: is 0.5; give numbers in an array", "gains = 0.5");
        assertStrip("white_K: is for white LEDs, which this strip does not have; ", "white_K = 4000");
        assertStrip("white_K: is 1; give a number from 1500 to 25000", "order = \"GRBW\", white_K = 1");
        assertStrip("dithering: is 1; give true or false", "dithering = 1");
        assertStrip("measured: is 1; give a table", "measured = 1");
    }

    @Test
    void measuredStrips() {
        String red = "red = { x = 0.69, y = 0.31, luminance = 30 }, ";
        String green = "green = { x = 0.17, y = 0.7, luminance = 70 }, ";
        String blue = "blue = { x = 0.13, y = 0.08, luminance = 12 }";
        String all = red + green + blue;
        assertStrip("measured.blue: is missing; give blue = { x", "measured = { " + red + green.replace("}, ", "} }"));
        assertStrip(
                "measured.red.luminance: is missing; ",
                "measured = { red = { x = 0.69, y = 0.31 }, " + green + blue + " }");
        assertStrip(
                "measured.red: x = 0.9, y = 0.9 is the chromaticity of no light; ",
                "measured = { " + all.replace("0.69, y = 0.31", "0.9, y = 0.9") + " }");
        assertStrip(
                "measured.red: an LED's luminance is above 0, ",
                "measured = { " + all.replace("luminance = 30", "luminance = 0") + " }");
        assertStrip(
                "measured: red, green and blue were measured on one line of",
                "measured = { " + red + red.replace("red", "green") + blue + " }");
        assertStrip("measured.target_K: is 1000; ", "measured = { " + all + ", target_K = 1000 }");
        assertStrip("gains: cannot be combined with measured; ", "gains = [1, 1, 1], measured = { " + all + " }");
        String white = ", white = { x = 0.38, y = 0.38, luminance = 100 } }";
        assertStrip("measured: is for white LEDs, which this strip does not have; ", "measured = { " + all + white);
        assertStrip(
                "white_K: cannot be combined with measured.white; ",
                "order = \"GRBW\", white_K = 4000, measured = { " + all + white);
    }

    @Test
    void aRhythmWithoutAPeriodIsShownOneThatHasOne() {
        for (String wrong : List.of("Iso", "Iso 0s", "Iso 0.0 s")) {
            assertLayer(
                    "rhythm: \"" + wrong + "\" is not a valid rhythm; it needs a period, such as \"Iso 4s\"",
                    "colour = \"red\", rhythm = \"" + wrong + "\"");
        }
        assertLayer(
                "rhythm: \"Fl(2)\" is not a valid rhythm; it needs a period, such as \"Fl(2) 10s\"",
                "colour = \"red\", rhythm = \"Fl(2)\"");
    }

    @Test
    void aLongValueIsNotRepeatedAtLength() {
        for (String key :
                List.of("colour", "colour = \"red\", rhythm", "colour = \"red\", blend", "colour = \"red\", zone")) {
            ConfigException wrong = assertThrows(
                    ConfigException.class,
                    () -> ConfigFile.read(
                            GOOD + "[looks.warm]\nlayers = [{ " + key + " = \"" + "q".repeat(10_000) + "\" }]\n",
                            "t.toml"));
            String mistake = wrong.mistakes().get(0).toString();
            assertTrue(mistake.length() < 700, () -> mistake.length() + " characters: " + mistake);
            assertTrue(mistake.contains("q".repeat(50)), mistake);
        }
    }
}
