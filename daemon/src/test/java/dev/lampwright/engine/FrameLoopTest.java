package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.colour.CssColour;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.cue.Condition;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.cue.Easing;
import dev.lampwright.cue.Wishes;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.look.AllExtent;
import dev.lampwright.look.Blend;
import dev.lampwright.look.LayerSpec;
import dev.lampwright.look.Level;
import dev.lampwright.look.LookSpec;
import dev.lampwright.look.Rhythm;
import dev.lampwright.look.SolidPaint;
import dev.lampwright.look.Zone;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.testing.Await;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicLongArray;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrameLoopTest {
    private static final String FILE = """
            broker.url = "mqtt://127.0.0.1"
            printer.state = { topic = "shop/birch/job", printing = ["RUN"] }
            controller.port = "memory"
            strip.pixels = 3
            """;

    /** Adds up what is reported. */
    private static final class Told implements StatusWatch {
        private final AtomicLong leftOut = new AtomicLong();
        private final AtomicLong most = new AtomicLong();
        private final Queue<Early> hurried = new ConcurrentLinkedQueue<>();

        @Override
        public void start(long firstFrameNanos) {}

        @Override
        public void shown(long tick, Statuses statuses) {}

        @Override
        public void asked(long tick, Wishes wishes) {}

        @Override
        public void delivered(Delivery delivery) {}

        @Override
        public void early(Early early) {
            hurried.add(early);
        }

        @Override
        public void leftOut(long tick, long count) {
            leftOut.addAndGet(count);
            most.accumulateAndGet(count, Math::max);
        }
    }

    /** The demo's last line shows the most that the strip drew: 3 pixels × 3 channels × 12 mA, and 3 mA dark, are 111 mA. */
    @Test
    void theMostIsKeptWhenTheLightHasGone() {
        Config config = Configs.of(3, "RGB", ", channel_mA = 12, idle_mA = 1");
        LookSpec white = look("white", "white");
        CueSpec lit =
                new CueSpec(white, List.of(new Condition.InState(Set.of(PrinterState.PRINTING))), 0, Easing.LINEAR);
        CueSpec dark = new CueSpec(look("dark", "black"), List.of(), 0, Easing.LINEAR);
        Chain chain = Chain.of(config.setup(), config.light().showing(List.of(lit, dark)), 60);
        AtomicReference<Statuses> status = new AtomicReference<>(
                Statuses.of(PrinterStatus.nothingHeard().withState(PrinterState.PRINTING, System.nanoTime())));
        FrameLoop loop = new FrameLoop(
                new FrameLoop.Rig(chain, new FrameSlot(9, 0), new FrameTap(config), () -> {}),
                status::get,
                () -> Wishes.NONE,
                System::nanoTime,
                60,
                StatusWatch.NOBODY,
                System.nanoTime());
        loop.start();
        Await.until("light", () -> loop.snapshot().current().milliamps() == 111);
        status.set(Statuses.of(PrinterStatus.nothingHeard().withState(PrinterState.IDLE, System.nanoTime())));
        Await.until("darkness", () -> loop.snapshot().current().milliamps() == 3);
        loop.close();
        assertEquals(111, loop.snapshot().mostMilliamps());
    }

    private static LookSpec look(String name, String colour) {
        LayerSpec layer = new LayerSpec(
                Zone.run(0, 2),
                new SolidPaint(CssColour.colour(colour)),
                new AllExtent(),
                Rhythm.FIXED,
                Level.fixed(1),
                Blend.NORMAL);
        return new LookSpec(name, List.of(layer), List.of(), false);
    }

    /** Nobody knows how other lights have flickered so far, so they are left alone for a second. */
    @Test
    void otherLightsAreKeptBackForASecond() throws ConfigException {
        Config config = ConfigFile.read(FILE, "birch.toml");
        AtomicLong shown = new AtomicLong();
        FrameLoop loop = new FrameLoop(
                rig(config, Chain.of(config), shown),
                () -> Statuses.NOTHING_HEARD,
                () -> Wishes.NONE,
                System::nanoTime,
                60,
                StatusWatch.NOBODY,
                System.nanoTime());
        loop.start();
        Await.until("a frame", () -> shown.get() != 0);
        long waited = firstAfterChange(loop, Configs.of(7, "GRB", ""));
        assertTrue(waited >= TimeUnit.SECONDS.toNanos(1), waited + " ns");
        loop.close();
    }

    private static long firstAfterChange(FrameLoop loop, Config next) {
        AtomicLong shown = new AtomicLong();
        long changed = System.nanoTime();
        loop.change(rig(next, Chain.of(next), shown));
        Await.until("a frame of the new rig", () -> shown.get() != 0);
        return shown.get() - changed;
    }

    private static FrameLoop.Rig rig(Config config, Chain chain, AtomicLong shown) {
        return new FrameLoop.Rig(
                chain,
                new FrameSlot(
                        config.setup().stripBytes(), config.setup().dimmers().size()),
                new FrameTap(config),
                () -> shown.compareAndSet(0, System.nanoTime()));
    }

    /** Counted on its own thread, as each frame is sent; a compiler that is still working may allocate a little on its account. */
    @Test
    void framesThatLeaveAllocateNothing() {
        Config config = Configs.of(7, "GRB", """
                [looks.silent]
                layers = [{ paint = "ramp", colours = ["red", "lime", "blue"], cycle_s = 2 }]
                """);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        int frames = 240;
        AtomicLongArray allocated = new AtomicLongArray(2 * frames);
        AtomicInteger left = new AtomicInteger();
        FrameLoop loop = new FrameLoop(
                new FrameLoop.Rig(Chain.of(config), new FrameSlot(21, 0), new FrameTap(config), () -> {
                    int frame = left.getAndIncrement();
                    if (frame < allocated.length()) {
                        allocated.set(frame, threads.getCurrentThreadAllocatedBytes());
                    }
                }),
                () -> Statuses.NOTHING_HEARD,
                () -> Wishes.NONE,
                System::nanoTime,
                240,
                StatusWatch.NOBODY,
                System.nanoTime());
        loop.start();
        Await.until("frames leave", () -> left.get() >= allocated.length());
        loop.close();
        long bytes = allocated.get(2 * frames - 1) - allocated.get(frames);
        assertEquals(0, bytes / frames, bytes + " bytes in " + frames + " frames");
    }

    /** At one frame a second, a frame that does not wait for the grid is obvious. */
    @Test
    void whatIsUrgentDoesNotWaitForTheGridButForTheFrameBefore() throws ConfigException {
        Config config = ConfigFile.read(FILE, "birch.toml");
        Told told = new Told();
        FrameLoop loop = new FrameLoop(
                rig(config, Chain.of(config), new AtomicLong()),
                () -> Statuses.NOTHING_HEARD,
                () -> Wishes.NONE,
                System::nanoTime,
                1,
                told,
                System.nanoTime());
        loop.start();
        Await.until("the first frame", () -> loop.snapshot().frames() == 1);
        loop.hurry();
        Await.until("a frame ahead of its time", () -> told.hurried.size() == 1);
        loop.hurry();
        Await.until("another", () -> told.hurried.size() == 2);
        loop.close();
        for (Early early : told.hurried) {
            assertTrue(early.nanos() < TimeUnit.SECONDS.toNanos(1), "after the grid's time before it: " + early);
        }
        assertTrue(told.hurried.remove().tick() < told.hurried.remove().tick(), "one frame for each time on the grid");
    }

    /** Still light is sent four times a second, and four times in each holdover. */
    @ParameterizedTest
    @CsvSource({"3, 4", "0.1, 40"})
    void lightThatStandsStillIsSentNowAndThen(double holdoverS, double mostASecond) {
        Config config = Configs.of(3, "GRB", """
                controller.holdover_s = %s
                [looks.flat]
                layers = [{ colour = "teal" }]
                [[cues]]
                look = "flat"
                fade_s = 0
                """.formatted(holdoverS));
        AtomicLong sent = new AtomicLong();
        FrameLoop loop = new FrameLoop(
                new FrameLoop.Rig(Chain.of(config), new FrameSlot(9, 0), new FrameTap(config), sent::incrementAndGet),
                () -> Statuses.NOTHING_HEARD,
                () -> Wishes.NONE,
                System::nanoTime,
                60,
                StatusWatch.NOBODY,
                System.nanoTime());
        loop.start();
        Await.until("the light to stand still", () -> loop.snapshot().frames() > 60);
        long begun = System.nanoTime();
        long before = sent.get();
        Await.until("two seconds of frames", () -> loop.snapshot().frames() > 180);
        loop.close();
        double aSecond = (sent.get() - before) / ((System.nanoTime() - begun) * 1e-9);
        assertTrue(sent.get() > before, "sent all the same");
        assertTrue(aSecond <= mostASecond + 1, aSecond + " a second");
    }

    /** Frames are counted as if each had been made at its time, and never before it; the next one reflects the news. */
    @Test
    void itSleepsWhileLightStandsStillAndNewsWakesIt() {
        Config config = Configs.of(3, "GRB", """
                [looks.flat]
                layers = [{ colour = "teal" }]
                [[cues]]
                state = "held"
                look = "printing"
                fade_s = 0
                [[cues]]
                look = "flat"
                fade_s = 0
                """);
        AtomicLong asked = new AtomicLong();
        AtomicReference<Statuses> status = new AtomicReference<>(Statuses.NOTHING_HEARD);
        FrameLoop loop = new FrameLoop(
                rig(config, Chain.of(config), new AtomicLong()),
                () -> {
                    asked.incrementAndGet();
                    return status.get();
                },
                () -> Wishes.NONE,
                System::nanoTime,
                60,
                StatusWatch.NOBODY,
                System.nanoTime());
        loop.start();
        Await.until("the light to stand still", () -> loop.snapshot().frames() > 10);
        long begun = System.nanoTime();
        FrameReport before = loop.snapshot();
        long askedBefore = asked.get();
        Await.until("two seconds of frames", () -> loop.snapshot().frames() > 130);
        FrameReport after = loop.snapshot();
        double ticks = (System.nanoTime() - begun) * 60e-9;
        long counted = after.frames() + after.skipped() - before.frames() - before.skipped();
        assertTrue(counted <= ticks + 2, counted + " frames where " + ticks + " were due");
        long made = asked.get() - askedBefore;
        assertTrue(made < counted / 4, made + " of " + counted + " frames were made at their time");
        status.set(Statuses.of(PrinterStatus.nothingHeard().withState(PrinterState.HELD, System.nanoTime())));
        loop.tellNews();
        Await.until("the news", () -> loop.snapshot().look().equals("printing"));
        loop.close();
    }

    /** The clock jumps ahead by half a second, as after the machine has slept. */
    @Test
    void everyTickLeftOutIsTold() throws ConfigException {
        Config config = ConfigFile.read(FILE, "birch.toml");
        Chain chain = Chain.of(config);
        FrameSlot slot = new FrameSlot(config.setup().stripBytes(), 0);
        AtomicLong leap = new AtomicLong();
        Told told = new Told();
        FrameLoop loop = new FrameLoop(
                new FrameLoop.Rig(chain, slot, new FrameTap(config), () -> {}),
                () -> Statuses.NOTHING_HEARD,
                () -> Wishes.NONE,
                () -> System.nanoTime() + leap.get(),
                60,
                told,
                System.nanoTime());
        loop.start();
        Await.until("a few frames", () -> loop.snapshot().frames() > 3);
        leap.set(TimeUnit.MILLISECONDS.toNanos(500));
        Await.until("the leap noticed", () -> told.most.get() >= 28);
        loop.close();
        assertEquals(loop.snapshot().skipped(), told.leftOut.get());
        assertTrue(loop.snapshot().frames() > 3, "frames go on");
    }
}
