package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.guard.EverySecond;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Several printers on one strip: each view shows its printer like a separate strip, and the guards apply to all of them together. */
class ViewsTest {
    private static final int RATE = 60;
    private static final List<PrinterState> STATES = List.of(PrinterState.values());
    private static final int EACH = 12;
    private static final String BEGIN = """
            broker.url = "mqtt://127.0.0.1"
            controller.port = "/dev/ttyACM0"
            """;
    private static final String ALONE = BEGIN + """
            supply.ceiling_mA = 20000
            printer.readings.job.progress.topic = "shop/alder/job"
            strip.pixels = 12
            """;
    private static final String TWO = BEGIN + """
            supply.ceiling_mA = 20000
            printers.alder.readings.job.progress.topic = "shop/alder/job"
            printers.birch.readings.job.progress.topic = "shop/birch/job"
            """;
    private static final String PAIR = TWO + "strip.pixels = 24\n";

    private static Config config(String text) {
        try {
            return ConfigFile.read(text, "t.toml");
        } catch (ConfigException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    private static Frame frame(Config config) {
        return new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
    }

    private static long nanos(int frame) {
        return frame * 1_000_000_000L / RATE;
    }

    private static PrinterStatus busy(PrinterState state, double progress) {
        return PrinterStatus.nothingHeard()
                .withReading(Quantity.BED_SETPOINT, 60, 0)
                .withReading(Quantity.BED_ACTUAL, 22 + 38 * progress, 0)
                .withReading(Quantity.NOZZLE_SETPOINT, 215, 0)
                .withReading(Quantity.NOZZLE_ACTUAL, 22 + 190 * progress, 0)
                .withReading(Quantity.JOB_PROGRESS, progress, 0)
                .withState(state, 0);
    }

    private static Statuses both(PrinterStatus alder, PrinterStatus birch) {
        return Statuses.NOTHING_HEARD.with("alder", alder).with("birch", birch);
    }

    /** Draws some frames of a chain and returns the bytes of the last. */
    private static Frame drawn(Config config, Statuses statuses, Wishes wishes, int frames) {
        Chain chain = Chain.of(config);
        Frame frame = frame(config);
        for (int i = 0; i < frames; i++) {
            chain.make(statuses, wishes, nanos(i), frame);
        }
        return frame;
    }

    private static byte[] pixels(Frame frame, int from, int to) {
        return Arrays.copyOfRange(frame.strip(), 3 * from, 3 * to);
    }

    /** Frame by frame, each shows what a separate strip shows: the picture of a single printer is the reference. */
    @ParameterizedTest
    @EnumSource
    void eachViewShowsItsPrinterAsAStripOfItsOwnWould(PrinterState state) {
        Config pair = config(PAIR);
        Config alone = config(ALONE);
        Chain together = Chain.of(pair);
        Chain first = Chain.of(alone);
        Chain second = Chain.of(alone);
        Frame whole = frame(pair);
        Frame one = frame(alone);
        Frame other = frame(alone);
        for (int i = 0; i < 5 * RATE; i++) {
            PrinterStatus alder = busy(i < 2 * RATE ? PrinterState.PRINTING : state, 0.4);
            PrinterStatus birch = busy(PrinterState.HELD, 0.8);
            together.make(both(alder, birch), Wishes.NONE, nanos(i), whole);
            first.make(alder, nanos(i), one);
            second.make(birch, nanos(i), other);
            assertArrayEquals(one.strip(), pixels(whole, 0, EACH), "alder, frame " + i);
            assertArrayEquals(other.strip(), pixels(whole, EACH, 2 * EACH), "birch, frame " + i);
        }
        assertEquals(0, together.guard().heldFrames(), "nothing was held, so the comparison is one of looks");
    }

    @Test
    void aFaultIsItsOwn() {
        Chain chain = Chain.of(config(PAIR));
        Frame frame = frame(config(PAIR));
        Wishes night = Wishes.NONE.withQuiet(0.1);
        byte[] before = pixels(
                drawn(config(PAIR), both(busy(PrinterState.DONE, 1), busy(PrinterState.HELD, 0.5)), night, 3 * RATE),
                EACH,
                2 * EACH);
        for (int i = 0; i < 3 * RATE; i++) {
            chain.make(
                    both(busy(i < RATE ? PrinterState.DONE : PrinterState.FAULT, 1), busy(PrinterState.HELD, 0.5)),
                    night,
                    nanos(i),
                    frame);
        }
        assertArrayEquals(before, pixels(frame, EACH, 2 * EACH), "birch is dimmed for the night as before");
        assertEquals(AlarmState.ALERT, chain.printers().get(0).alarm());
        assertEquals(AlarmState.NORMAL, chain.printers().get(1).alarm());
        assertEquals("fault", chain.lookOf(chain.printers().get(0)));
        assertEquals("held", chain.lookOf(chain.printers().get(1)));
        assertEquals(PrinterState.FAULT, chain.state(), "the one that needs a person most comes first");
    }

    @Test
    void acknowledgingOneLeavesTheOther() {
        Chain chain = Chain.of(config(PAIR));
        Frame frame = frame(config(PAIR));
        Statuses faults = both(busy(PrinterState.FAULT, 0.5), busy(PrinterState.FAULT, 0.5));
        chain.make(faults, Wishes.NONE, 0, frame);
        Wishes one = Wishes.NONE.withCounts(Wish.ACKNOWLEDGEMENTS_OF, Map.of("birch", 1L));
        chain.make(faults, one, nanos(1), frame);
        assertEquals(AlarmState.ALERT, chain.printers().get(0).alarm());
        assertEquals(AlarmState.ACKNOWLEDGED, chain.printers().get(1).alarm());
        assertEquals("fault", chain.lookOf(chain.printers().get(0)));
        assertEquals("fault-seen", chain.lookOf(chain.printers().get(1)));
        chain.make(faults, one.withCounts(Wish.ACKNOWLEDGEMENTS_OF, Map.of("birch", 1L, "alder", 1L)), nanos(2), frame);
        assertEquals(AlarmState.ACKNOWLEDGED, chain.printers().get(0).alarm());
    }

    /** An acknowledgement from before a printer was added does not apply to its faults. */
    @Test
    void whatWasAcknowledgedBeforeIsNotMeantForAPrinterThatIsAdded() {
        Chain before = Chain.of(config(ALONE));
        Wishes asked = Wishes.NONE.acknowledged();
        before.make(PrinterStatus.nothingHeard(), asked, 0, frame(config(ALONE)));
        Chain after = Chain.after(before, config(PAIR));
        after.takeOver(before);
        Statuses faults = both(busy(PrinterState.FAULT, 0.5), busy(PrinterState.IDLE, 0));
        after.make(faults, asked, nanos(1), frame(config(PAIR)));
        assertEquals(AlarmState.ALERT, after.printers().get(0).alarm());
    }

    @Test
    void eachFallsSilentByItself() {
        Config config = config(
                PAIR.replace("printers.alder.readings", "printers.alder.silent_after_s = 5\nprinters.alder.readings"));
        Chain chain = Chain.of(config);
        Frame frame = frame(config);
        Statuses heard = both(busy(PrinterState.IDLE, 0), busy(PrinterState.IDLE, 0));
        for (int i = 0; i < 8 * RATE; i++) {
            chain.make(heard, Wishes.NONE, nanos(i), frame);
        }
        assertEquals(PrinterState.SILENT, chain.printers().get(0).state());
        assertEquals(PrinterState.IDLE, chain.printers().get(1).state());
    }

    @Test
    void viewsHaveTheirOwnPixelsDirectionAndZones() {
        Config config = config(TWO + """
                strip.pixels = 30
                views.alder.pixels = "11-0"
                views.birch = { pixels = "15-26", zones = { bed = "15-17", door = "20" } }
                looks.printing.layers = [{ zone = "bed", colour = "red" }, { zone = "nozzle", colour = "blue" }, { zone = "door", colour = "lime" }]
                """);
        Statuses printing = both(busy(PrinterState.PRINTING, 0.5), busy(PrinterState.PRINTING, 0.5));
        Frame frame = drawn(config, printing, Wishes.NONE, 3 * RATE);
        assertEquals(
                "bbbbbbrrrrrr...rrr..l" + "bbbbbb" + "...",
                colours(frame),
                "bed of alder is where alder begins: at pixel 11");
        Frame job = drawn(
                config(PAIR + "views.alder.pixels = \"11-0\"\nviews.birch.pixels = \"12-23\""),
                both(busy(PrinterState.PRINTING, 0.25), busy(PrinterState.PRINTING, 0.25)),
                Wishes.NONE,
                3 * RATE);
        for (int i = 0; i < EACH; i++) {
            assertArrayEquals(pixels(job, 12 + i, 13 + i), pixels(job, 11 - i, 12 - i), "mirrored in pixel " + i);
        }
    }

    /** Each pixel as a letter, by its brightest channel; bytes are in the order G, R, B. */
    private static String colours(Frame frame) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < frame.strip().length; i += 3) {
            int green = frame.strip()[i] & 0xFF;
            int red = frame.strip()[i + 1] & 0xFF;
            int blue = frame.strip()[i + 2] & 0xFF;
            int most = Math.max(green, Math.max(red, blue));
            text.append(most == 0 ? '.' : most == red ? 'r' : most == green ? 'l' : 'b');
        }
        return text.toString();
    }

    /** Every paint and extent on a zone that exists only in one of the views. */
    @Test
    void aLayerOnAZoneOfAnotherViewShowsNothing() {
        Config config = config(PAIR + """
                views.alder.pixels = "0-11"
                views.birch = { pixels = "12-23", zones = { door = "20-23" } }
                looks.idle.layers = [
                  { zone = "door", paint = "ramp", colours = ["red", "lime"], cycle_s = 2 },
                  { zone = "door", paint = "scale", colours = ["red", "lime"], by = "job.progress", extent = "bar" },
                  { zone = "door", paint = "ember" },
                  { zone = "door", paint = "palette", colours = ["red", "lime"], extent = "grains", glint_s = 2 },
                  { zone = "door", colour = "red", extent = "pointer", by = "job.progress", softness_px = 1 },
                  { zone = "door", colour = "red", extent = "band", tail_px = 2, speed_zones_per_s = 1 },
                  { zone = "door", colour = "red", extent = "band", cycle_s = 4, back_and_forth = true },
                ]
                """);
        Chain chain = Chain.of(config);
        Frame frame = frame(config);
        for (int i = 0; i < 2 * RATE; i++) {
            chain.make(both(busy(PrinterState.IDLE, 0.5), busy(PrinterState.IDLE, 0.5)), Wishes.NONE, nanos(i), frame);
        }
        assertEquals(List.of(), chain.faults());
        assertEquals("....................", colours(frame).substring(0, 20));
        assertFalse(colours(frame).endsWith("...."), colours(frame));
    }

    @Test
    void whatIsAskedForIsForTheWholeStripAlsoBetweenViews() {
        Config config = config(TWO + """
                strip.pixels = 8
                views.alder.pixels = "0-2"
                views.birch.pixels = "5-7"
                """);
        float[] rgba = new float[32];
        Arrays.fill(rgba, Float.NaN);
        for (int pixel : new int[] {2, 3, 4, 5}) {
            rgba[4 * pixel] = 0;
            rgba[4 * pixel + 1] = 0;
            rgba[4 * pixel + 2] = 1;
            rgba[4 * pixel + 3] = 1;
        }
        Wishes wishes = Wishes.NONE.withPixels(rgba, Long.MAX_VALUE);
        Frame quiet = drawn(config, Statuses.NOTHING_HEARD, wishes, 2);
        assertEquals("..bbbb..", colours(quiet), "silent printers have a faint look that begins dark");
        Frame alarmed = drawn(config, both(busy(PrinterState.IDLE, 0), busy(PrinterState.FAULT, 0)), wishes, 2);
        assertEquals("bbb", colours(alarmed).substring(2, 5), "what lies on alder and on the rest stays");
        assertEquals("rrr", colours(alarmed).substring(5), "a fault of birch hides what lies on birch alone");
    }

    /** Pixels that were asked for across views keep fading in. */
    @Test
    void aChangedConfigurationDoesNotHurryPixelsBetweenViews() {
        Config config = config(TWO + """
                strip.pixels = 8
                views.alder.pixels = "0-2"
                views.birch.pixels = "5-7"
                """);
        float[] rgba = new float[32];
        Arrays.fill(rgba, Float.NaN);
        System.arraycopy(new float[] {0, 0, 1, 1}, 0, rgba, 12, 4);
        Wishes blue = Wishes.NONE.withPixels(rgba, Long.MAX_VALUE).with(Wish.PIXELS_FADE, new float[] {2});
        Frame frame = frame(config);
        Chain unchanged = Chain.of(config);
        Chain before = Chain.of(config);
        for (Chain chain : List.of(unchanged, before)) {
            chain.make(Statuses.NOTHING_HEARD, Wishes.NONE, 0, frame);
            chain.make(Statuses.NOTHING_HEARD, blue, nanos(1), frame);
        }
        unchanged.make(Statuses.NOTHING_HEARD, blue, nanos(30), frame);
        byte[] expected = frame.strip().clone();
        Chain after = Chain.after(before, config);
        after.takeOver(before);
        after.make(Statuses.NOTHING_HEARD, blue, nanos(30), frame);
        assertTrue((expected[11] & 0xFF) > 0, "the fade has begun");
        assertEquals(expected[11], frame.strip()[11], "the pixel between the views fades as if nothing had changed");
    }

    @Test
    void aLampIsAsBrightAsTheBrightestViewHasItUnlessItIsOnesOwn() {
        String lamps = """
                strip.pixels = 24
                dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
                dimmers.side = { channel = 1, volts = 24, full_mA = 800 }
                views.alder = { pixels = "0-11", lights = ["side"] }
                views.birch.pixels = "12-23"
                looks.printing.dimmers = { work = 1, side = 1 }
                looks.idle.dimmers = { work = 0.2, side = 0.2 }
                """;
        Config config = config(TWO + lamps);
        PrinterStatus idle = busy(PrinterState.IDLE, 0);
        PrinterStatus printing = busy(PrinterState.PRINTING, 0);
        assertArrayEquals(
                new int[] {13107, 13107},
                drawn(config, both(idle, idle), Wishes.NONE, 5 * RATE).duties());
        assertArrayEquals(
                new int[] {65535, 13107},
                drawn(config, both(idle, printing), Wishes.NONE, 5 * RATE).duties());
        assertArrayEquals(
                new int[] {65535, 65535},
                drawn(config, both(printing, idle), Wishes.NONE, 5 * RATE).duties());
        Wishes off = Wishes.NONE.withLevels(new float[] {0, Float.NaN});
        assertArrayEquals(
                new int[] {0, 65535},
                drawn(config, both(printing, idle), off, 5 * RATE).duties());
    }

    @Test
    void aPlainColourStripShowsThePrinterThatHasIt() {
        Config config = config(PAIR + """
                dimmers.glow = { channels = [0, 1, 2], volts = 12, full_mA = 300 }
                views.alder.pixels = "0-11"
                views.birch = { pixels = "12-23", lights = ["glow"] }
                """);
        int[] calm = drawn(config, both(busy(PrinterState.FAULT, 0), busy(PrinterState.DONE, 0)), Wishes.NONE, 4 * RATE)
                .duties();
        assertTrue(calm[1] > calm[0], "green: birch is done");
        int[] fault = drawn(config, both(busy(PrinterState.DONE, 0), busy(PrinterState.FAULT, 0)), Wishes.NONE, 4)
                .duties();
        assertTrue(fault[0] > 0 && fault[1] == 0, "red: birch has a fault");
    }

    @Test
    void lightMayFollowAnotherPrinterAndAllOfThem() {
        Config config = config(PAIR + """
                looks.idle.layers = [{ colour = "red", extent = "bar", by = "alder.job.progress" }]
                looks.done.layers = [{ colour = "blue", extent = "bar", by = "printers.printing" }]
                cues = [{ state = "idle", look = "idle", fade_s = 0 }, { state = "done", look = "done", fade_s = 0 }]
                """);
        Frame frame = drawn(config, both(busy(PrinterState.PRINTING, 0.5), busy(PrinterState.IDLE, 0)), Wishes.NONE, 2);
        assertEquals("rrrrrr......", colours(frame).substring(EACH));
        frame = drawn(config, both(busy(PrinterState.PRINTING, 0.5), busy(PrinterState.DONE, 0)), Wishes.NONE, 2);
        assertEquals("bbbbbb......", colours(frame).substring(EACH), "one of two prints");
    }

    @Test
    void cuesMayGoByAnyByAllByOneAndByTheView() {
        Config config = config(PAIR + """
                looks.a.layers = [{ colour = "red" }]
                looks.b.layers = [{ colour = "lime" }]
                looks.c.layers = [{ colour = "blue" }]
                looks.d.layers = [{ colour = "black" }]
                cues = [
                  { view = "birch", any = "fault", look = "a", fade_s = 0 },
                  { all = ["idle", "done"], look = "b", fade_s = 0 },
                  { state = ["alder.held", "stopped"], look = "c", fade_s = 0 },
                  { signal = "printers.printing", above = 1, look = "a", fade_s = 0 },
                  { look = "d", fade_s = 0 },
                ]
                """);
        assertEquals("....rrrr", ends(config, PrinterState.FAULT, PrinterState.IDLE));
        assertEquals("llllllll", ends(config, PrinterState.DONE, PrinterState.IDLE));
        assertEquals("bbbbbbbb", ends(config, PrinterState.HELD, PrinterState.IDLE), "both look at alder");
        assertEquals("....bbbb", ends(config, PrinterState.IDLE, PrinterState.STOPPED), "birch's own state");
        assertEquals("rrrrrrrr", ends(config, PrinterState.PRINTING, PrinterState.PRINTING), "more than one prints");
        assertEquals("........", ends(config, PrinterState.PRINTING, PrinterState.IDLE));
    }

    /** Four pixels of each view. */
    private static String ends(Config config, PrinterState alder, PrinterState birch) {
        String all = colours(drawn(config, both(busy(alder, 0.5), busy(birch, 0.5)), Wishes.NONE, 2));
        return all.substring(0, 4) + all.substring(2 * EACH - 4);
    }

    /** WCAG 2.2 by {@link EverySecond}, and the current calculated separately in floating point. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theGuardsHoldForAllViewsTogether(long seed) {
        Config config = config(BEGIN + """
                supply.ceiling_mA = 260
                strip.pixels = 30
                dimmers.work = { channel = 0, volts = 24, full_mA = 800, ceiling_mA = 250 }
                printers.alder.readings.job.progress.topic = "shop/alder/job"
                printers.birch.readings.job.progress.topic = "shop/birch/job"
                printers.rowan.readings.job.progress.topic = "shop/rowan/job"
                looks.fault.layers = [{ colour = "red", rhythm = "Iso 0.2s" }]
                looks.held.layers = [{ colour = "white", rhythm = "Iso 0.3s" }]
                """);
        SplittableRandom chance = new SplittableRandom(seed);
        Chain chain = Chain.of(config);
        EverySecond everySecond = new EverySecond(config.setup(), config.fitting(), List.of(5.0, 24.0));
        Frame frame = frame(config);
        Statuses statuses = Statuses.NOTHING_HEARD;
        for (int i = 0; i < 20 * RATE; i++) {
            if (chance.nextInt(12) == 0) {
                String printer = List.of("alder", "birch", "rowan").get(chance.nextInt(3));
                PrinterState state = STATES.get(1 + chance.nextInt(STATES.size() - 1));
                statuses = statuses.with(
                        printer,
                        statuses.of(printer)
                                .withReading(Quantity.JOB_PROGRESS, chance.nextDouble(), nanos(i))
                                .withState(state, nanos(i)));
            }
            chain.make(statuses, Wishes.NONE, nanos(i), frame);
            everySecond.see(frame, nanos(i));
            assertTrue(milliamps(config.setup(), frame) <= 260 + 1e-6, "frame " + i);
            assertTrue(frame.duties()[0] * 800.0 / 65535 <= 250 + 1e-6, "frame " + i);
        }
        assertTrue(everySecond.most() <= 3, everySecond.most() + " flashes in a second");
        assertTrue(chain.guard().heldFrames() > 0, "there was something to hold");
        assertTrue(chain.guard().dimmedFrames() > 0, "there was something to dim");
    }

    private static double milliamps(Setup setup, Frame frame) {
        double sum = setup.pixels() * setup.darkMicroamps() / 1000.0;
        for (int i = 0; i < frame.strip().length; i++) {
            sum += (frame.strip()[i] & 0xFF) / 255.0 * setup.channelMicroamps().get(i % 3) / 1000.0;
        }
        return sum;
    }

    /** The same status objects for a chain that may rest, and equal but different ones for a chain that never may. */
    @Test
    void lightThatRestsIsWhatItWouldBeIfItWereMadeAgain() {
        Config config = config(PAIR + "views.alder.pixels = \"0-9\"\nviews.birch.pixels = \"12-23\"");
        SplittableRandom chance = new SplittableRandom(7);
        Chain resting = Chain.of(config);
        Chain making = Chain.of(config);
        Frame one = frame(config);
        Frame other = frame(config);
        PrinterStatus alder = busy(PrinterState.IDLE, 0);
        PrinterStatus birch = busy(PrinterState.DONE, 1);
        Statuses statuses = both(alder, birch);
        long rested = 0;
        for (int i = 0; i < 60 * RATE; i++) {
            if (chance.nextInt(300) == 0) {
                PrinterState state = STATES.get(1 + chance.nextInt(STATES.size() - 1));
                statuses = statuses.with(
                        chance.nextBoolean() ? "alder" : "birch",
                        busy(state, 0.5).heardAt(nanos(i)));
            }
            Statuses equal = both(again(statuses.of("alder")), again(statuses.of("birch")));
            resting.make(statuses, Wishes.NONE, nanos(i), one);
            making.make(equal, Wishes.NONE, nanos(i), other);
            assertArrayEquals(other.strip(), one.strip(), "frame " + i);
            rested += resting.restNanos(nanos(i)) > 0 ? 1 : 0;
        }
        assertTrue(rested > RATE, "light rested in " + rested + " frames");
    }

    private static PrinterStatus again(PrinterStatus status) {
        return status.heardAt(status.heardAtNanos());
    }

    @Test
    void aFrameOfManyViewsAllocatesNothing() {
        StringBuilder text = new StringBuilder(BEGIN + "supply.ceiling_mA = 500\nstrip.pixels = 64\n");
        Statuses statuses = Statuses.NOTHING_HEARD;
        for (int i = 0; i < 8; i++) {
            text.append("printers.p")
                    .append(i)
                    .append(".readings.job.progress.topic = \"shop/p")
                    .append(i)
                    .append("\"\n");
            statuses = statuses.with("p" + i, busy(STATES.get(i), 0.5));
        }
        Config config = config(text.toString());
        Chain chain = Chain.of(config);
        Frame frame = frame(config);
        int at = 0;
        for (; at < 4000; at++) {
            chain.make(statuses, Wishes.NONE, nanos(at), frame);
        }
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long least = Long.MAX_VALUE;
        for (int run = 0; run < 5; run++) {
            long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
            for (int i = 0; i < 200; i++, at++) {
                chain.make(statuses, Wishes.NONE, nanos(at), frame);
            }
            least = Math.min(
                    least,
                    threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before);
        }
        assertTrue(least < 200, least + " bytes in 200 frames");
    }

    @Test
    void eightPixelsShowHowFarTheJobIs() {
        Config config = config(TWO + "strip.pixels = 16\n");
        int before = 0;
        for (int eighth = 1; eighth <= 8; eighth++) {
            Statuses statuses = both(busy(PrinterState.PRINTING, eighth / 8.0), busy(PrinterState.IDLE, 0));
            byte[] shown = pixels(drawn(config, statuses, Wishes.NONE, 2 * RATE), 0, 8);
            int green = 0;
            for (int i = 0; i < shown.length; i += 3) {
                green += shown[i] & 0xFF;
            }
            assertTrue(green > before, green + " after " + before + " at " + eighth + " eighths");
            before = green;
        }
    }

    @Test
    void onePrinterWithANameIsAsOneWithout() {
        Config named = config(ALONE.replace("printer.", "printers.alder."));
        Frame one =
                drawn(named, Statuses.NOTHING_HEARD.with("alder", busy(PrinterState.WARMING, 0.6)), Wishes.NONE, RATE);
        Frame other = drawn(config(ALONE), Statuses.of(busy(PrinterState.WARMING, 0.6)), Wishes.NONE, RATE);
        assertArrayEquals(other.strip(), one.strip());
        assertFalse(named.light().views().isEmpty());
    }
}
