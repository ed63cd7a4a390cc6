package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.cue.Condition;
import dev.lampwright.look.ExtentSpec;
import dev.lampwright.look.Level;
import dev.lampwright.look.PaintSpec;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A configuration is a value: its contents, and nothing else, decide whether two are equal, and nothing in it can change. */
class ConfigValueTest {
    private static final String MORE = """
            [looks.plenty]
            steady_for_camera = false
            dimmers = { work = { by = "job.progress" } }
            layers = [
              { paint = "ramp", colours = ["navy", "teal", "lime"], stops = [0, 0.3, 1], cycle_s = 9 },
              { paint = "scale", colours = ["navy", "red"], steps = true, by = "bed.heat", blend = "screen" },
              { paint = "ember", brightest_K = 1600, time_constant_s = 1.5, seed = 3, zone = "sides" },
              { colour = "white", extent = "grains", density = 0.2, glint_s = 4, seed = 9 },
              { colour = "gold", extent = "pointer", by = "job.progress", width_px = 1.5, softness_px = 0.5 },
              { colour = "pink", extent = "band", repeat_px = 10, tail_px = 3, speed_zones_per_s = 0.25 },
              { colour = "gray", rhythm = "Mo(U) 15s", edge_s = 0.2, phase = 0.5 },
              { paint = "palette", colours = ["red", "lime"], extent = "grains", glint_s = 0.3 },
              { paint = "ramp", colours = ["navy", "teal"], ring = true, spread = 0.5, cycle_s = 4, back_and_forth = true },
              { colour = "gray", opacity_by = "bed.actual_C", dark_below = 40, full_above = 60 },
            ]
            [[cues]]
            event = "camera"
            alarm = "acknowledged"
            look = "plenty"
            [page]
            port = 8081
            hosts = ["alder.local"]
            [metrics]
            port = 9101
            [quiet]
            from = "22:00"
            to = "06:30"
            """;
    private static final String TEXT = example() + MORE;

    private static final String SEVERAL = """
            broker.url = "mqtt://127.0.0.1"
            controller.port = "/dev/ttyACM0"
            strip.pixels = 30
            printers.alder.readings.job.progress.topic = "shop/alder/job"
            printers.birch.readings.job.progress.topic = "shop/birch/job"
            views.alder.pixels = "0-9"
            views.birch = { pixels = "10-19", zones = { bed = "10-12" } }
            cues = [
              { any = "fault", all = ["idle", "fault"], view = "alder", look = "fault" },
              { state = ["alder.held", "birch.held"], look = "held" },
              { look = "idle" },
            ]
            """;

    private static String example() {
        try (InputStream file = ConfigValueTest.class.getResourceAsStream("example.toml")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static Config read(String text) {
        try {
            return ConfigFile.read(text, "alder.toml");
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void theSameTextReadTwiceIsEqual() {
        assertEquals(read(TEXT), read(TEXT));
        assertEquals(read(TEXT).hashCode(), read(TEXT).hashCode());
    }

    @Test
    void theSameSaidInOtherWordsIsEqual() {
        String other = TEXT.replace("\"midnightblue\"", "\"rgb(25 25 112)\"").replace("idle_mA = 1 ", "idle_mA = 1.0");
        assertNotEquals(TEXT, other);
        assertEquals(read(TEXT), read(other));
    }

    /** The differences after one piece of the text has changed: no more than that, or a change would disturb something unrelated. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            frames_per_s = 60            | frames_per_s = 50            | framesPerSecond
            127.0.0.1:1883               | 127.0.0.1:1884               | talk
            silent_after_s = 20          | silent_after_s = 21          | light
            ambient_C = 22               | ambient_C = 23               | light
            hot_above_C = 43             | hot_above_C = 44             | light
            topic = "shop/alder/job"     | topic = "shop/birch/job"     | talk
            at = "/phase"                | at = "/state"                | talk
            idle = ["READY"]             | idle = ["READY", "IDLE"]     | talk
            held = ["WAIT"]              | held = ["WAITING"]           | talk
            at = "/plate/now"            | at = "/plate/is"             | talk
            unit = "percent"             | unit = "share"               | talk
            gone = ["offline"]           | gone = ["off"]               | talk
            begin = ["SNAP"]             | begin = ["SNIP"]             | talk
            lasts_s = 10                 | lasts_s = 11                 | talk
            /dev/ttyACM0                 | /dev/ttyACM1                 | controller
            baud = 500000                | baud = 250000                | controller
            holdover_s = 3               | holdover_s = 4               | controller
            when_silent = "beacon"       | when_silent = "dark"         | controller
            at_end = "fade"              | at_end = "when_silent"       | atEnd
            ceiling_mA = 1500            | ceiling_mA = 1400            | controller
            order = "GRB"                | order = "RGB"                | controller light
            channel_mA = 12              | channel_mA = [12, 12, 13]    | controller
            idle_mA = 1                  | idle_mA = 0.9                | controller
            dithering = false            | dithering = true             | light
            dithering = false            | gains = [1, 0.9, 0.8]        | light
            wire_C = 40                  | wire_C = 41                  | wiring
            strip = { volts = 5, amps = 3 }| strip = { volts = 5, amps = 4 }| wiring
            from = "supply"              | from = "board"               | wiring
            length_m = [1, 1.5]          | length_m = [1, 1.6]          | wiring
            load_W = 19                  | load_W = 18                  | wiring
            data = "direct"              | data = "shifted"             | wiring
            supply = "own"               | supply = "lamps"             | wiring
            bed = "0-9"                  | bed = "0-8"                  | light
            job = "29-20"                | job = "20-29"                | light
            29-20 mirrored               | 29-20                        | light
            full_mA = 800                | full_mA = 900                | controller
            channels = [1, 2, 3]         | channels = [3, 2, 1]         | light
            dim_order = ["glow", "sides"]| dim_order = ["sides", "glow"]| light
            rise_s = 2                   | rise_s = 3                   | light
            sequence = "A-4"             | sequence = "M"               | light
            prefix = "lampwright/alder"  | prefix = "lampwright/birch"  | talk
            brightness = 1.0             | brightness = 0.9             | desk
            work = 0.2                   | work = 0.3                   | light
            opacity = 0.2                | opacity = 0.3                | light
            opacity = 0.4                | opacity = 0.5                | light
            oklch(70% 0.15 50)           | oklch(70% 0.15 51)           | light
            opacity_from = 40            | opacity_from = 41            | light
            swell 4s                     | swell 5s                     | light
            speed_px_per_s = 2           | speed_px_per_s = -2          | light
            above = 40                   | above = 41                   | light
            margin = 2                   | margin = 3                   | light
            fade_s = 1.5                 | fade_s = 1.4                 | light
            ease-in-out                  | ease-in                      | light
            state = "warming"            | state = ["warming", "held"]  | light
            steady_for_camera = false    | steady_for_camera = true     | light
            { by = "job.progress" }      | { by = "bed.heat" }          | light
            "teal"                       | "tan"                        | light
            stops = [0, 0.3, 1]          | stops = [0, 0.4, 1]          | light
            cycle_s = 9                  | cycle_s = -9                 | light
            steps = true                 | steps = false                | light
            by = "bed.heat", blend       | by = "chamber.heat", blend   | light
            blend = "screen"             | blend = "overlay"            | light
            brightest_K = 1600           | brightest_K = 1700           | light
            time_constant_s = 1.5              | time_constant_s = 1.6              | light
            seed = 3                     | seed = 4                     | light
            density = 0.2                | density = 0.3                | light
            glint_s = 4                  | glint_s = 5                  | light
            seed = 9                     | seed = 8                     | light
            width_px = 1.5               | width_px = 1.6               | light
            softness_px = 0.5            | softness_px = 0.6            | light
            repeat_px = 10               | repeat_px = 11               | light
            tail_px = 3                  | tail_px = 4                  | light
            speed_zones_per_s = 0.25     | speed_px_per_s = 0.25        | light
            Mo(U) 15s                    | Mo(A) 15s                    | light
            event = "camera"             | state = "held"               | light
            alarm = "acknowledged"       | alarm = "ringback"           | light
            port = 8081                  | port = 8082                  | page
            ["alder.local"]              | ["birch.local"]              | page
            port = 9101                  | port = 9102                  | metricsPort
            to = "06:30"                 | to = "06:31"                 | desk
            """)
    void whatIsSaidOtherwiseTellsItself(String from, String to, String parts) {
        assertTrue(TEXT.contains(from), from);
        assertEquals(new TreeSet<>(List.of(parts.split(" "))), different(read(TEXT), read(TEXT.replace(from, to))));
    }

    private static Set<String> different(Config one, Config other) {
        Map<String, Object> others = parts(other);
        Set<String> different = new TreeSet<>();
        parts(one).forEach((name, part) -> {
            if (!part.equals(others.get(name))) {
                different.add(name);
            }
        });
        assertEquals(different.isEmpty(), one.equals(other));
        return different;
    }

    private static Map<String, Object> parts(Config config) {
        Map<String, Object> parts = new LinkedHashMap<>();
        Arrays.stream(Config.class.getRecordComponents())
                .forEach(component -> parts.put(component.getName(), ValueWalk.component(config, component)));
        return parts;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            shop/birch/job               | shop/rowan/job               | talk
            pixels = "10-19"             | pixels = "10-18"             | light
            bed = "10-12"                | bed = "10-13"                | light
            any = "fault"                | any = "held"                 | light
            view = "alder"               | view = "birch"               | light
            "birch.held"                 | "birch.done"                 | light
            """)
    void whatIsSaidOfSeveralPrintersTellsItself(String from, String to, String parts) {
        assertTrue(SEVERAL.contains(from), from);
        assertEquals(
                new TreeSet<>(List.of(parts.split(" "))), different(read(SEVERAL), read(SEVERAL.replace(from, to))));
    }

    @Test
    void nothingInItCanChange() {
        ValueWalk walk = new ValueWalk();
        walk.visit(read(TEXT), "config");
        walk.visit(read(SEVERAL), "several");
        assertEquals(List.of(), walk.faults());
        for (Class<?> closed : List.of(PaintSpec.class, ExtentSpec.class, Level.class, Condition.class)) {
            List<Class<?>> met = Arrays.stream(closed.getPermittedSubclasses())
                    .filter(walk.met()::contains)
                    .toList();
            assertEquals(List.of(closed.getPermittedSubclasses()), met, "add the new one to the text of this test");
        }
    }
}
