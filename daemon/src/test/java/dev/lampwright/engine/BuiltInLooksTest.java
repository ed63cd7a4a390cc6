package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.colour.Light;
import dev.lampwright.colour.Oklab;
import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.tool.check.Progress;
import dev.lampwright.tool.check.Rehearsal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class BuiltInLooksTest {
    private static final int SECONDS = 24;
    private static final int RATE = 30;
    private static final String DIMMERS = """
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            glow = { channels = [1, 2, 3], volts = 12, full_mA = 300 }
            """;

    /** A printer in the middle of its job, with everything known. */
    private static PrinterStatus midst() {
        return PrinterStatus.nothingHeard()
                .withReading(Quantity.BED_SETPOINT, 60, 0)
                .withReading(Quantity.BED_ACTUAL, 45, 0)
                .withReading(Quantity.NOZZLE_SETPOINT, 215, 0)
                .withReading(Quantity.NOZZLE_ACTUAL, 100, 0)
                .withReading(Quantity.JOB_PROGRESS, 0.4, 0);
    }

    /** The light of a look's strip, frame by frame: premultiplied linear red, green and blue of each pixel. */
    private static List<float[]> drawn(Config config, String look, PrinterStatus status) {
        LightSpec light = config.light().showing(config.looks().get(look));
        Chain chain = Chain.of(config.setup(), light, config.framesPerSecond());
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        List<float[]> drawn = new ArrayList<>();
        for (int i = 0; i < SECONDS * RATE; i++) {
            chain.make(status, i * 1_000_000_000L / RATE, frame);
            assertTrue(chain.light().isSound(), look);
            drawn.add(chain.light().rgba().clone());
        }
        return drawn;
    }

    private static Optional<Rehearsal.Failing> rehearsed(Config config) {
        return Rehearsal.of(config, Progress.UNSEEN).failing();
    }

    @ParameterizedTest
    @CsvSource({
        "1, RGB",
        "2, RGB",
        "7, RGB",
        "30, RGB",
        "300, RGB",
        "1, GRBW",
        "2, GRBW",
        "7, GRBW",
        "30, GRBW",
        "300, GRBW"
    })
    void everyLookCanBeDrawnOnAnyStrip(int pixels, String order) {
        assertEquals(Optional.empty(), rehearsed(Configs.of(pixels, order, "")));
        assertEquals(Optional.empty(), rehearsed(Configs.of(pixels, order, DIMMERS)));
    }

    @Test
    void thereIsOneForEveryState() {
        Config config = Configs.of(30, "GRB", "");
        List<String> words =
                Stream.of(PrinterState.values()).map(PrinterState::word).toList();
        assertEquals(words, List.copyOf(config.looks().keySet()).subList(0, words.size()));
        Chain chain = Chain.of(config);
        Frame frame = new Frame(90, 0);
        for (PrinterState state : PrinterState.values()) {
            chain.make(midst().withState(state, 0), 0, frame);
            assertEquals(state.word(), chain.look());
        }
    }

    /**
     * Whatever the length of the strip, and whether the printer reports much or nothing, no two looks are alike: even their mean colours
     * differ by more than is just noticeable, which is a deltaEOK of 0.02 (CSS Color 4, "Gamut Mapping").
     */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 7, 30, 300})
    void everyStateLooksDifferent(int pixels) {
        Config config = Configs.of(pixels, "GRB", "");
        for (PrinterStatus status : List.of(midst(), PrinterStatus.nothingHeard())) {
            Map<PrinterState, Oklab> means = new EnumMap<>(PrinterState.class);
            for (PrinterState state : PrinterState.values()) {
                means.put(state, mean(drawn(config, state.word(), status)));
            }
            means.forEach((one, mean) -> means.forEach((other, otherMean) -> assertTrue(
                    one == other || mean.difference(otherMean) > 0.05,
                    () -> one + " and " + other + " differ by " + mean.difference(otherMean))));
        }
    }

    private static Oklab mean(List<float[]> drawn) {
        double[] sum = new double[3];
        for (float[] rgba : drawn) {
            for (int i = 0; i < rgba.length; i++) {
                if (i % 4 < 3) {
                    sum[i % 4] += rgba[i];
                }
            }
        }
        double count = drawn.size() * drawn.get(0).length / 4.0;
        return Oklab.of(new Light((float) (sum[0] / count), (float) (sum[1] / count), (float) (sum[2] / count)));
    }

    /** Without colours: the brightness of the whole strip over time, which reveals each rhythm. */
    @ParameterizedTest
    @CsvSource({"SILENT, 6", "IDLE, 0", "PRINTING, 0", "HELD, 6", "DONE, 4", "STOPPED, 4", "FAULT, 24"})
    void rhythmsTellThemApart(PrinterState state, int flashes) {
        List<float[]> drawn = drawn(Configs.of(30, "GRB", ""), state.word(), midst());
        double[] light = drawn.stream().mapToDouble(BuiltInLooksTest::luminance).toArray();
        assertEquals(flashes, rises(light), state + " in " + SECONDS + " s");
    }

    /** WCAG 2.x counts a flash where light falls and rises by a tenth of its maximum; the limit is three a second. */
    @ParameterizedTest
    @EnumSource
    void nothingFlashesFasterThanOnceASecond(PrinterState state) {
        List<float[]> drawn = drawn(Configs.of(7, "GRB", ""), state.word(), midst());
        double[] light = drawn.stream().mapToDouble(BuiltInLooksTest::luminance).toArray();
        assertTrue(rises(light) <= SECONDS, state + ": " + rises(light));
    }

    private static double luminance(float[] rgba) {
        double sum = 0;
        for (int at = 0; at < rgba.length; at += 4) {
            sum += new Light(rgba[at], rgba[at + 1], rgba[at + 2]).luminance();
        }
        return sum / (rgba.length / 4.0);
    }

    /** How often light rises from its lower to its upper third, if they differ by more than a third of the maximum. */
    private static int rises(double[] light) {
        double most = 0;
        double least = 1;
        for (double value : light) {
            most = Math.max(most, value);
            least = Math.min(least, value);
        }
        if (most - least < most / 3) {
            return 0;
        }
        int rises = 0;
        boolean high = false;
        for (double value : light) {
            double place = (value - least) / (most - least);
            if (!high && place > 2 / 3.0) {
                rises++;
                high = true;
            } else if (place < 1 / 3.0) {
                high = false;
            }
        }
        return rises;
    }

    /** The length of a job's bar matches its progress. */
    @Test
    void progressIsSeen() {
        Config config = Configs.of(30, "GRB", "");
        for (double progress : new double[] {0.2, 0.5, 0.9}) {
            float[] rgba = drawn(config, "printing", midst().withReading(Quantity.JOB_PROGRESS, progress, 0))
                    .get(0);
            int end = (int) Math.round(30 * progress);
            assertTrue(rgba[4 * (end - 3) + 1] > 3 * rgba[4 * (end + 2) + 1], "at " + progress);
        }
    }

    /**
     * Between a bed at 60 °C that was switched off and one at 43 °C, which may be touched, the mark shrinks from the zone's end to nothing.
     */
    @ParameterizedTest
    @ValueSource(strings = {"idle", "done", "stopped"})
    void whatIsStillHotIsMarked(String look) {
        Config config = Configs.of(30, "GRB", "");
        assertEquals(14, brightestOfBed(config, look, 60), 1);
        assertEquals(7, brightestOfBed(config, look, 51.5), 1);
        List<float[]> cool = drawn(config, look, PrinterStatus.nothingHeard());
        List<float[]> touchable = drawn(config, look, bed(PrinterStatus.nothingHeard(), 43, 0));
        for (int i = 0; i < cool.size(); i++) {
            assertArrayEquals(cool.get(i), touchable.get(i), look + " without a mark");
        }
    }

    private static PrinterStatus bed(PrinterStatus before, double actualC, long nanos) {
        return before.withReading(Quantity.BED_SETPOINT, 0, nanos).withReading(Quantity.BED_ACTUAL, actualC, nanos);
    }

    /** The reddest pixel in the zone of a bed that was at 60 °C when it was switched off. */
    private static int brightestOfBed(Config config, String look, double actualC) {
        LightSpec light = config.light().showing(config.looks().get(look));
        Chain chain = Chain.of(config.setup(), light, config.framesPerSecond());
        Frame frame = new Frame(config.setup().stripBytes(), 0);
        PrinterStatus status = bed(PrinterStatus.nothingHeard(), 60, 0);
        for (int second = 0; second < 20; second++) {
            long nanos = second * 1_000_000_000L;
            status = bed(status, second == 0 ? 60 : actualC, nanos);
            chain.make(status, nanos, frame);
        }
        float[] rgba = chain.light().rgba();
        int brightest = 0;
        for (int pixel = 0; pixel < 15; pixel++) {
            brightest = rgba[4 * pixel] > rgba[4 * brightest] ? pixel : brightest;
        }
        return brightest;
    }

    /** Mean current of 30 pixels of the example's strip: 12 mA per channel and 1 mA per dark pixel. */
    @ParameterizedTest
    @CsvSource({
        "SILENT, 50",
        "IDLE, 130",
        "WARMING, 300",
        "PRINTING, 300",
        "HELD, 360",
        "DONE, 260",
        "STOPPED, 260",
        "FAULT, 420"
    })
    void theMeanCurrentIsModest(PrinterState state, int most) {
        double sum = 0;
        List<float[]> drawn = drawn(Configs.of(30, "GRB", ""), state.word(), midst());
        for (float[] rgba : drawn) {
            for (int i = 0; i < rgba.length; i++) {
                sum += i % 4 < 3 ? 12 * rgba[i] : 1;
            }
        }
        double mean = sum / drawn.size();
        assertTrue(mean <= most, state + ": " + mean + " mA");
    }

    @Test
    void oneOfTheUsersTakesItsPlace() {
        Config config = Configs.of(30, "GRB", "[looks.idle]\nlayers = [{ colour = \"red\" }]\n");
        assertEquals(10, config.looks().size());
        assertEquals(10, config.cues().size());
        List<float[]> drawn = drawn(config, "idle", midst());
        assertEquals(1, drawn.get(0)[0], 1e-5);
        assertTrue(config.cues().stream()
                .anyMatch(cue -> cue.look().equals(config.looks().get("idle"))));
        assertNotSame(
                config.looks().get("idle"), Configs.of(30, "GRB", "").looks().get("idle"));
        assertSame(config.looks().get("silent"), config.cues().get(9).look());
    }

    /** A plain colour strip also shows the state. */
    @ParameterizedTest
    @EnumSource
    void plainColourStripsAreLitToo(PrinterState state) {
        Config config = Configs.of(30, "GRB", DIMMERS);
        float most = 0;
        for (float[] rgba : drawn(config, state.word(), midst())) {
            assertEquals(4 * 31, rgba.length);
            most = Math.max(most, Math.max(rgba[120], Math.max(rgba[121], rgba[122])));
        }
        assertTrue(most > 0.02, state + ": " + most);
    }
}
