package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.cue.Wishes;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.testing.Await;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
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

        @Override
        public void start(long firstFrameNanos) {}

        @Override
        public void shown(long tick, PrinterStatus status) {}

        @Override
        public void asked(long tick, Wishes wishes) {}

        @Override
        public void leftOut(long tick, long count) {
            leftOut.addAndGet(count);
            most.accumulateAndGet(count, Math::max);
        }
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
                told);
        loop.start();
        Await.until("a few frames", () -> loop.frames() > 3);
        leap.set(TimeUnit.MILLISECONDS.toNanos(500));
        Await.until("the leap noticed", () -> told.most.get() >= 28);
        loop.close();
        assertEquals(loop.skipped(), told.leftOut.get());
        assertTrue(loop.frames() > 3, "frames go on");
    }
}
