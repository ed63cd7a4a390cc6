package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.config.Swatch;
import dev.lampwright.config.Swatches;
import dev.lampwright.cue.Wishes;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.tool.check.MadeUpStatus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every swatch passes every guard on strips from 8 to 1000 pixels: whatever the printer reports, or if it reports nothing, the flash guard
 * holds nothing back, the strip draws no more than three quarters of its maximum, and it is lit in every frame.
 */
class SwatchesTest {
    private static final Path FOLDER = Path.of("src/main/resources/dev/lampwright/config/swatches");
    private static final Set<String> STILL = Set.of("drawing-board");
    private static final Set<String> USES =
            Set.of("calm", "work", "progress", "heat", "standby", "held", "done", "fault", "night");
    private static final int MOST_S = 60;
    private static final int LEAST_S = 4;
    /** For random looks, many pixels show as much in a short time as a few in a long one. */
    private static final int PIXEL_SECONDS = 1800;

    private static final int RATE = 60;
    private static final long NANOS = 1_000_000_000L;
    /** So that no rhythm is at the same phase each time. */
    private static final long BETWEEN_RHYTHMS = 1_170_000_000L;

    private static final String LIGHTS = """
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            glow = { channels = [1, 2, 3], volts = 12, full_mA = 300 }
            """;

    /** Three quarters of what three channels of 12 mA draw on this many pixels. */
    private static Config limited(int pixels) {
        return Configs.lines("""
                strip = { pixels = %d, order = "GRB", channel_mA = 12, idle_mA = 0 }
                supply.ceiling_mA = %d
                """.formatted(pixels, pixels * 27) + LIGHTS);
    }

    private static Chain chain(Config config, String swatch) {
        LookSpec look = config.light().look(swatch).orElseThrow();
        LightSpec light = config.light().guardedBy(config.light().guard().withoutFlashing());
        return Chain.of(config.setup(), light.showing(look), RATE);
    }

    private static Frame frame(Config config) {
        return new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
    }

    private static Stream<Arguments> everySwatchOnEveryStrip() {
        return Stream.of(8, 9, 16, 30, 60, 144, 300, 1000)
                .flatMap(pixels -> Swatches.names().stream().map(name -> Arguments.of(pixels, name)));
    }

    @ParameterizedTest
    @MethodSource("everySwatchOnEveryStrip")
    void passesEveryGuardAndIsLit(int pixels, String name) {
        Config config = limited(pixels);
        Chain chain = chain(config, name);
        Frame frame = frame(config);
        List<PrinterStatus> statuses = MadeUpStatus.all(List.of());
        int seconds = Math.max(LEAST_S, Math.min(MOST_S, PIXEL_SECONDS / pixels));
        for (int i = 0; i < seconds * RATE; i++) {
            int step = i * statuses.size() / (seconds * RATE);
            chain.make(statuses.get(step), i * NANOS / RATE, frame);
            assertTrue(isLit(frame), "dark after " + (double) i / RATE + " s");
            assertTrue(frame.duties()[1] + frame.duties()[2] + frame.duties()[3] > 0, "the plain strip is dark");
        }
        assertEquals(List.of(), chain.faults(), "it failed, or its light was not within 0 and 1");
        assertEquals(0, chain.guard().heldFrames(), "held by the flash limit");
        assertEquals(0, chain.guard().dimmedFrames(), "dimmed to the ceiling");
    }

    private static boolean isLit(Frame frame) {
        for (byte channel : frame.strip()) {
            if (channel != 0) {
                return true;
            }
        }
        return false;
    }

    @ParameterizedTest
    @MethodSource("swatches")
    void movesUnlessItIsMeantToBeStill(String name) {
        Config config = limited(30);
        Chain chain = chain(config, name);
        Frame frame = frame(config);
        boolean moved = false;
        byte[] first = {};
        for (int i = 0; i < MOST_S; i++) {
            chain.make(PrinterStatus.nothingHeard(), i * BETWEEN_RHYTHMS, frame);
            first = i == 0 ? frame.strip().clone() : first;
            moved |= !Arrays.equals(first, frame.strip());
        }
        assertEquals(!STILL.contains(name), moved);
    }

    /** Light while nobody works is dim; light to work by is bright. Shares of the strip's maximum. */
    @ParameterizedTest
    @MethodSource("swatches")
    void isAsBrightAsItsUseAsksFor(String name) {
        Config config = limited(30);
        Chain chain = chain(config, name);
        Frame frame = frame(config);
        long sum = 0;
        for (int i = 0; i < MOST_S; i++) {
            chain.make(PrinterStatus.nothingHeard(), i * BETWEEN_RHYTHMS, frame);
            for (byte channel : frame.strip()) {
                sum += channel & 0xFF;
            }
        }
        double share = sum / 255.0 / frame.strip().length / MOST_S;
        String use = Swatches.named(name).use();
        double most = use.equals("night") || use.equals("standby") ? 0.04 : 0.7;
        double least = use.equals("work") ? 0.25 : 0.001;
        assertTrue(share >= least && share <= most, name + " takes " + share);
    }

    private static Stream<String> swatches() {
        return Swatches.names().stream();
    }

    @Test
    void areTwoDozenAndEachIsInAFileOfItsOwn() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            Set<String> there = files.map(file -> file.getFileName().toString().replace(".toml", ""))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(new TreeSet<>(Swatches.names()), there);
        }
        assertTrue(Swatches.names().size() >= 24);
        assertEquals(USES, swatches().map(name -> Swatches.named(name).use()).collect(Collectors.toSet()));
    }

    @ParameterizedTest
    @MethodSource("swatches")
    void saysInASentenceWhatItLooksLike(String name) {
        Swatch swatch = Swatches.named(name);
        assertTrue(swatch.sentence().matches("[A-Z].*\\."), swatch.sentence());
        assertTrue(swatch.sentence().length() <= 130, swatch.sentence());
        assertEquals(1, swatch.toml().split("\\[looks\\.", -1).length - 1);
        assertTrue(swatch.toml().contains("\n[looks." + name + "]\n"));
    }

    @ParameterizedTest
    @MethodSource("swatches")
    void drawsTheSameBytesWhenItsTextStandsInTheFile(String name) {
        Config config = limited(30);
        Config copied = Configs.lines("""
                strip = { pixels = 30, order = "GRB", channel_mA = 12, idle_mA = 0 }
                supply.ceiling_mA = 810
                """ + LIGHTS + Swatches.named(name).toml());
        assertTrue(copied.looks().containsKey(name));
        assertEquals(config.light().look(name).orElseThrow(), copied.looks().get(name));
    }

    @Test
    void aCueNamesOne() {
        Config config = Configs.of(30, "GRB", """
                [[cues]]
                state = "idle"
                look = "sea-mist"
                """);
        Chain chain = Chain.of(config);
        chain.make(PrinterStatus.nothingHeard().withState(PrinterState.IDLE, 0), 0, frame(config));
        assertEquals("sea-mist", chain.look());
        assertEquals(11, config.looks().size(), "the ten built-in ones, and the one that is used");
    }

    @Test
    void aLookIsOneAndMore() {
        Config config = Configs.of(30, "GRB", """
                [looks.idle]
                swatch = "sea-mist"
                layers = [{ colour = "red", extent = "pointer", by = "job.progress" }]
                """);
        LookSpec idle = config.looks().get("idle");
        LookSpec swatch = config.light().look("sea-mist").orElseThrow();
        assertEquals(swatch.layers(), idle.layers().subList(0, swatch.layers().size()));
        assertEquals(swatch.layers().size() + 1, idle.layers().size());
        assertEquals("idle", idle.name());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[dimmers]\nwork = { channel = 0, volts = 24, full_mA = 800 }\n"})
    void lightsTheWhiteLightWhereThereIsOneUnlessTheLookSaysOtherwise(String dimmers) {
        Config config = Configs.of(30, "GRB", dimmers + """
                [looks.idle]
                swatch = "drawing-board"
                """);
        LookSpec idle = config.looks().get("idle");
        assertEquals(dimmers.isEmpty() ? 0 : 1, idle.dimmers().size());
        assertEquals(config.light().look("drawing-board").orElseThrow().dimmers(), idle.dimmers());
        assertEquals(!dimmers.isEmpty(), idle.steadyForCamera());
    }

    @Test
    void theUsersOwnLookOfThatNameWins() {
        Config config = Configs.of(30, "GRB", """
                [looks.sea-mist]
                layers = [{ colour = "red" }]
                [[cues]]
                state = "idle"
                look = "sea-mist"
                """);
        LookSpec own = config.light().look("sea-mist").orElseThrow();
        assertEquals(1, own.layers().size());
        assertEquals(own, config.cues().get(0).look());
    }

    @Test
    void isShownWhenSomebodyAsksForItThoughNoCueUsesIt() {
        Config config = limited(30);
        Wishes wishes = Wishes.NONE.withLook("sea-mist", 60 * NANOS);
        Chain unprepared = Chain.of(config);
        unprepared.make(PrinterStatus.nothingHeard(), wishes, 0, frame(config));
        assertNotEquals("sea-mist", unprepared.look());

        Chain chain = Chain.of(config);
        chain.prepare(wishes);
        Frame asked = frame(config);
        chain.make(PrinterStatus.nothingHeard(), wishes, 0, asked);
        chain.make(PrinterStatus.nothingHeard(), wishes, 2 * NANOS, asked);
        assertEquals("sea-mist", chain.look());
        Chain cued = Chain.of(
                config.setup(),
                config.light().showing(config.light().look("sea-mist").orElseThrow()),
                RATE);
        Frame shown = frame(config);
        cued.make(PrinterStatus.nothingHeard(), 0, shown);
        cued.make(PrinterStatus.nothingHeard(), 2 * NANOS, shown);
        assertArrayEquals(shown.strip(), asked.strip());
    }

    @Test
    void thereIsNoneOfAnotherName() {
        Config config = limited(30);
        assertFalse(config.light().look("sea-miss").isPresent());
    }
}
