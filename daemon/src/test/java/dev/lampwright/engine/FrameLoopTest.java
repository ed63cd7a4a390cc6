package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import dev.lampwright.testing.Await;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class FrameLoopTest {
    private static final String FILE = """
            broker.url = "mqtt://127.0.0.1"
            printer.state = { topic = "shop/birch/job", printing = ["RUN"] }
            controller.port = "memory"
            strip.pixels = 3
            """;

    /** Adds up what is told. */
    private static final class Told implements StatusWatch {
        private final AtomicLong leftOut = new AtomicLong();
        private final AtomicLong most = new AtomicLong();
        private final Queue<Early> hurried = new ConcurrentLinkedQueue<>();

        @Override
        public void start(long firstFrameNanos) {}

        @Override
        public void shown(long tick, PrinterStatus status) {}

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

    /** The demo's last line tells the most that the strip took: 3 pixels × 3 channels × 12 mA, and 3 mA dark, are 111 mA. */
    @Test
    void theMostIsKeptWhenTheLightHasGone() {
        Config config = Configs.of(3, "RGB", ", channel_mA = 12, idle_mA = 1");
        LookSpec white = look("white", "white");
        CueSpec lit =
                new CueSpec(white, List.of(new Condition.InState(Set.of(PrinterState.PRINTING))), 0, Easing.LINEAR);
        CueSpec dark = new CueSpec(look("dark", "black"), List.of(), 0, Easing.LINEAR);
        Chain chain = Chain.of(config.setup(), config.light().showing(List.of(lit, dark)), 60);
        AtomicReference<PrinterStatus> status =
                new AtomicReference<>(PrinterStatus.nothingHeard().withState(PrinterState.PRINTING, System.nanoTime()));
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
        status.set(PrinterStatus.nothingHeard().withState(PrinterState.IDLE, System.nanoTime()));
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

    /** Nobody knows how other lights have flickered up to now, so they are left alone for a second. */
    @Test
    void otherLightsAreKeptBackForASecond() throws ConfigException {
        Config config = ConfigFile.read(FILE, "birch.toml");
        AtomicLong shown = new AtomicLong();
        FrameLoop loop = new FrameLoop(
                rig(config, Chain.of(config), shown),
                PrinterStatus::nothingHeard,
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

    /** At one frame a second, a frame that does not wait for the grid is plain to see. */
    @Test
    void whatIsUrgentDoesNotWaitForTheGridButForTheFrameBefore() throws ConfigException {
        Config config = ConfigFile.read(FILE, "birch.toml");
        Told told = new Told();
        FrameLoop loop = new FrameLoop(
                rig(config, Chain.of(config), new AtomicLong()),
                PrinterStatus::nothingHeard,
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

    /** The clock leaps ahead by half a second, as when the machine has slept. */
    @Test
    void everyTickLeftOutIsTold() throws ConfigException {
        Config config = ConfigFile.read(FILE, "birch.toml");
        Chain chain = Chain.of(config);
        FrameSlot slot = new FrameSlot(config.setup().stripBytes(), 0);
        AtomicLong leap = new AtomicLong();
        Told told = new Told();
        FrameLoop loop = new FrameLoop(
                new FrameLoop.Rig(chain, slot, new FrameTap(config), () -> {}),
                PrinterStatus::nothingHeard,
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
