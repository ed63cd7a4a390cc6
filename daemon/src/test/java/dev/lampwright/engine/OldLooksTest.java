package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * A file for an older version still gives the same light: what each layer and each built-in look drew, before any limit, is stored in
 * {@code old-looks.txt}, and may differ by one level of 255. {@code -Dgolden.write=true} adds what is new in the list below and replaces
 * nothing; to change existing lines, delete them and say why.
 */
class OldLooksTest {
    private static final Path KEPT = Path.of("src/test/resources/dev/lampwright/engine/old-looks.txt");
    private static final int PIXELS = 16;
    private static final int RATE = 60;
    private static final int SAMPLES = 12;
    private static final int FRAMES_A_SAMPLE = 37;

    /** Layers from an old file. */
    private static final List<String> LAYERS = List.of(
            "colour = 'orange', opacity = 0.4",
            "colour = 'red', rhythm = 'Iso 2s'",
            "colour = 'red', rhythm = 'Oc 4s'",
            "colour = 'red', rhythm = 'Fl 3s'",
            "colour = 'red', rhythm = 'Fl(2) 6s'",
            "colour = 'red', rhythm = 'Fl(3) 9.5 s'",
            "colour = 'red', rhythm = 'LFl 5s'",
            "colour = 'red', rhythm = 'Q'",
            "colour = 'red', rhythm = 'Q 2s'",
            "colour = 'red', rhythm = 'VQ'",
            "colour = 'red', rhythm = 'VQ 1.5s'",
            "colour = 'red', rhythm = 'Iso 0.12s'",
            "colour = 'red', rhythm = 'Mo(U) 7s'",
            "colour = 'red', rhythm = 'swell 4s'",
            "paint = 'ramp', colours = ['navy', 'red', 'gold']",
            "paint = 'ramp', colours = ['navy', 'red', 'gold'], cycle_s = 7",
            "paint = 'ramp', colours = ['navy', 'red', 'gold'], stops = [0.2, 0.5, 0.7], speed_px_per_s = -3",
            "paint = 'ramp', colours = ['navy', 'red'], steps = true, speed_zones_per_s = 0.3",
            "paint = 'ramp', colours = ['navy', 'red'], interpolation = 'oklch longer'",
            "paint = 'scale', colours = ['navy', 'red', 'gold'], by = 'job.progress'",
            "paint = 'scale', colours = ['navy', 'red'], by = 'nozzle.actual_C', from = 20, to = 200, steps = true",
            "paint = 'ember', brightest_K = 1600, strike_K = 220, strikes_per_px_s = 4.2, diffusion_px2_per_s = 1.5,"
                    + " time_constant_s = 2",
            "colour = 'teal', extent = 'bar', by = 'job.progress', softness_px = 2",
            "colour = 'teal', extent = 'pointer', by = 'bed.heat', width_px = 3, softness_px = 1",
            "colour = 'teal', extent = 'band', width_px = 2, tail_px = 5, softness_px = 1, cycle_s = 6",
            "colour = 'teal', extent = 'band', speed_px_per_s = -3, repeat_px = 5",
            "colour = 'white', extent = 'grains', density = 0.3, glint_s = 0.5, seed = 7",
            "colour = 'white', extent = 'grains'",
            "colour = 'green', opacity_by = 'nozzle.actual_C', opacity_from = 40, opacity_to = 180",
            "zone = 'job', colour = 'green', blend = 'plus-lighter', opacity_by = 'job.progress'");

    @Test
    void drawTheSameLight() throws IOException {
        Map<String, String> kept = kept();
        Map<String, String> now = drawn();
        if (Boolean.getBoolean("golden.write")) {
            now.forEach(kept::putIfAbsent);
            Files.writeString(
                    KEPT,
                    kept.entrySet().stream()
                            .map(each -> each.getKey() + "\t" + each.getValue() + "\n")
                            .collect(Collectors.joining()));
        }
        assertEquals(kept.keySet(), now.keySet());
        now.forEach((look, light) -> assertAlike(look, kept.get(look), light));
    }

    private static Map<String, String> kept() throws IOException {
        if (!Files.exists(KEPT)) {
            return new LinkedHashMap<>();
        }
        return Files.readAllLines(KEPT).stream()
                .map(line -> line.split("\t"))
                .collect(Collectors.toMap(part -> part[0], part -> part[1], (a, b) -> b, LinkedHashMap::new));
    }

    private static void assertAlike(String look, String kept, String now) {
        byte[] before = HexFormat.of().parseHex(kept);
        byte[] after = HexFormat.of().parseHex(now);
        assertEquals(before.length, after.length, look);
        for (int i = 0; i < before.length; i++) {
            int sample = i / (3 * PIXELS);
            assertEquals(before[i] & 0xFF, after[i] & 0xFF, 1, look + ", sample " + sample + ", byte " + i);
        }
    }

    private static Map<String, String> drawn() {
        String layers = LAYERS.stream()
                .map(layer -> "[looks.own" + LAYERS.indexOf(layer) + "]\nlayers = [{ " + layer + " }]\n")
                .collect(Collectors.joining());
        Config config = Configs.of(PIXELS, "GRB", layers.replace('\'', '"'));
        Function<String, String> title =
                name -> name.startsWith("own") ? LAYERS.get(Integer.parseInt(name.substring(3))) : name;
        Map<String, String> drawn = new LinkedHashMap<>();
        config.looks().keySet().forEach(look -> drawn.put(title.apply(look), light(config, look)));
        return drawn;
    }

    /** The strip's light at each sample, a byte for each of red, green and blue. */
    private static String light(Config config, String look) {
        LightSpec light = config.light().showing(config.looks().get(look));
        Chain chain = Chain.of(config.setup(), light, RATE);
        Frame frame = new Frame(config.setup().stripBytes(), 0);
        List<String> samples = new ArrayList<>();
        for (int i = 0; i < SAMPLES * FRAMES_A_SAMPLE; i++) {
            long nanos = i * 1_000_000_000L / RATE;
            chain.make(status((double) i / (SAMPLES * FRAMES_A_SAMPLE), nanos), nanos, frame);
            if (i % FRAMES_A_SAMPLE == FRAMES_A_SAMPLE - 1) {
                samples.add(bytes(chain.light().rgba()));
            }
        }
        return String.join("", samples);
    }

    private static String bytes(float[] rgba) {
        byte[] bytes = new byte[3 * PIXELS];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) Math.round(255 * rgba[4 * (i / 3) + i % 3]);
        }
        return HexFormat.of().formatHex(bytes);
    }

    private static PrinterStatus status(double share, long nanos) {
        return PrinterStatus.nothingHeard()
                .withState(PrinterState.PRINTING, nanos)
                .withReading(Quantity.BED_SETPOINT, 60, nanos)
                .withReading(Quantity.BED_ACTUAL, 22 + 38 * share, nanos)
                .withReading(Quantity.NOZZLE_SETPOINT, 215, nanos)
                .withReading(Quantity.NOZZLE_ACTUAL, 22 + 193 * share, nanos)
                .withReading(Quantity.JOB_PROGRESS, share, nanos);
    }
}
