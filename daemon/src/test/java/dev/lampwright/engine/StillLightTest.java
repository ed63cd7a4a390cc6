package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.cue.Wishes;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A chain does not recompute what cannot differ. Whatever it skips, each frame and each count equals that of a chain that computes every
 * frame because it gets a different, equal status each time.
 */
class StillLightTest {
    private static final long FRAME = 1_000_000_000L / 60;
    private static final long SECOND = 1_000_000_000L;
    private static final int FRAMES = 6000;
    private static final List<PrinterState> STATES = List.of(PrinterState.values());
    private static final List<String> LOOKS = List.of("steps", "bars", "warming", "fault", "printing");

    private static final String LIGHT = """
            printer.silent_after_s = 15
            printer.events.camera = { topic = "shop/alder/camera", begin = ["SNAP"], lasts_s = 5 }
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            glow = { channels = [1, 2, 3], volts = 12, full_mA = 300 }
            [looks.steps]
            steady_for_camera = true
            layers = [
              { paint = "ramp", colours = ["navy", "red", "gold"], opacity = 0.5 },
              { colour = "white", rhythm = "Oc 6s", opacity = 0.8 },
              { zone = "glow", colour = "red", rhythm = "Fl(2) 8s" },
            ]
            [looks.bars]
            dimmers = { work = { by = "job.progress", from = 1, to = 0 } }
            layers = [
              { colour = "teal", extent = "bar", by = "job.progress", softness_px = 2 },
              { colour = "white", extent = "pointer", by = "bed.heat", rhythm = "Iso 2s", opacity_by = "still_hot" },
              { colour = "orange", extent = "band", speed_px_per_s = 0, blend = "screen" },
            ]
            [[cues]]
            event = "camera"
            look = "steps"
            fade_s = 0.5
            [[cues]]
            signal = "job.progress"
            above = 0.7
            margin = 0.2
            look = "bars"
            [[cues]]
            state = "held"
            look = "steps"
            """;

    /** What a printer reports and people ask for, at random, with long pauses in between. */
    private static final class Story {
        private final SplittableRandom chance;
        private PrinterStatus status = PrinterStatus.nothingHeard();
        private Wishes wishes = Wishes.NONE;

        Story(long seed) {
            chance = new SplittableRandom(seed);
        }

        void goOn(Config config, long nanos) {
            if (chance.nextInt(150) == 0) {
                hear(nanos);
            }
            if (chance.nextInt(400) == 0) {
                ask(config, nanos);
            }
        }

        private void hear(long nanos) {
            double share = chance.nextInt(11) / 10.0;
            status = switch (chance.nextInt(5)) {
                case 0 -> status.withState(STATES.get(chance.nextInt(STATES.size())), nanos);
                case 1 -> status.withReading(Quantity.JOB_PROGRESS, share, nanos);
                case 2 ->
                    status.withReading(Quantity.BED_SETPOINT, chance.nextInt(2) * 60, nanos)
                            .withReading(Quantity.BED_ACTUAL, 22 + 40 * share, nanos);
                case 3 -> status.withEvent("camera", nanos + chance.nextInt(300) * FRAME, nanos);
                default -> status.heardAt(nanos);
            };
        }

        private void ask(Config config, long nanos) {
            long until = nanos + chance.nextInt(300) * FRAME;
            int pixels = config.fitting().canvas().rgba().length;
            float[] own = new float[pixels];
            Arrays.fill(own, chance.nextBoolean() ? 0.6f : Float.NaN);
            wishes = switch (chance.nextInt(7)) {
                case 0 -> wishes.withBrightness(chance.nextDouble());
                case 1 -> wishes.withQuiet(chance.nextDouble());
                case 2 -> wishes.withLook(LOOKS.get(chance.nextInt(LOOKS.size())), until);
                case 3 -> wishes.withPixels(own, until);
                case 4 -> wishes.withLevels(new float[] {chance.nextInt(2) == 0 ? 0.3f : Float.NaN});
                case 5 -> wishes.acknowledged();
                default -> Wishes.NONE;
            };
        }

        PrinterStatus status() {
            return status;
        }

        /** An equal status, but a different object for a chain that compares identity. */
        PrinterStatus anotherStatus() {
            return status.heard() ? status.heardAt(status.heardAtNanos()) : status;
        }

        Wishes wishes() {
            return wishes;
        }
    }

    private static Frame frame(Config config) {
        return new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"65535", "700", "150"})
    void whatIsLeftOutWouldHaveBeenTheSame(String ceiling) {
        Config config =
                Configs.lines("strip.pixels = 24\nsupply.ceiling_mA = " + ceiling + "\nguard.rise_s = 3\n" + LIGHT);
        int same = 0;
        for (long seed = 1; seed <= 3; seed++) {
            same += follow(config, seed);
        }
        assertTrue(same > FRAMES, same + " of " + 3 * FRAMES + " frames were as the one before");
    }

    private static int follow(Config config, long seed) {
        Chain resting = Chain.of(config);
        Chain working = Chain.of(config);
        Frame rested = frame(config);
        Frame worked = frame(config);
        Frame before = frame(config);
        Story story = new Story(seed);
        int same = 0;
        for (int i = 0; i < FRAMES; i++) {
            long nanos = -7 * SECOND + i * FRAME;
            story.goOn(config, nanos);
            if (i % 700 == 0) {
                resting.delivered(new Delivery(i, 300_000_000, i % 1400 == 0));
                working.delivered(new Delivery(i, 300_000_000, i % 1400 == 0));
            }
            before.copyFrom(rested);
            boolean differs = resting.make(story.status(), story.wishes(), nanos, rested);
            working.make(story.anotherStatus(), story.wishes(), nanos, worked);
            String where = "seed " + seed + ", frame " + i + ", " + resting.look();
            assertArrayEquals(worked.strip(), rested.strip(), where);
            assertArrayEquals(worked.duties(), rested.duties(), where);
            assertEquals(i == 0 || !before.sameAs(rested), differs, where);
            assertEquals(working.guard().dimmedFrames(), resting.guard().dimmedFrames(), where);
            assertEquals(working.guard().heldFrames(), resting.guard().heldFrames(), where);
            assertEquals(working.guard().stripMilliamps(), resting.guard().stripMilliamps(), where);
            assertEquals(working.state(), resting.state(), where);
            assertEquals(working.look(), resting.look(), where);
            same += differs ? 0 : 1;
        }
        return same;
    }

    /** There is no layer of ours that counts how often it is drawn, so redrawing is detected with a deliberately spoilt frame. */
    @Test
    void lightThatStandsStillIsNotDrawnAgain() {
        Config config =
                Configs.of(10, "GRB", "[looks.flat]\nlayers = [{ colour = 'teal' }]\n[[cues]]\nlook = 'flat'\n");
        Chain chain = Chain.of(config);
        Frame frame = frame(config);
        for (int i = 0; i < 100; i++) {
            chain.make(PrinterStatus.nothingHeard(), i * FRAME, frame);
        }
        float[] light = chain.light().rgba();
        light[0] = 0.123f;
        byte[] strip = frame.strip().clone();
        for (int i = 100; i < 200; i++) {
            assertFalse(chain.make(PrinterStatus.nothingHeard(), i * FRAME, frame), "frame " + i);
            assertEquals(0.123f, light[0], "drawn again in frame " + i);
            assertArrayEquals(strip, frame.strip());
        }
        chain.make(PrinterStatus.nothingHeard(), Wishes.NONE.withBrightness(0.5), 200 * FRAME, frame);
        assertFalse(light[0] == 0.123f, "drawn again, as somebody asked for something");
    }
}
