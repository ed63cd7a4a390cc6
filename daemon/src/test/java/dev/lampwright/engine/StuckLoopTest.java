package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.config.Config;
import dev.lampwright.cue.Wishes;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.printer.Statuses;
import dev.lampwright.service.ServiceWatch;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.NotifyReceiver;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A stuck frame loop gives no sign of life to the service manager, so the service is restarted. */
@Timeout(60)
class StuckLoopTest {
    private static final String WATCHDOG_MICROS = "40000";

    @TempDir
    private Path folder;

    private final CountDownLatch freed = new CountDownLatch(1);
    private final AtomicInteger looks = new AtomicInteger();
    private volatile boolean stuck;

    private Statuses status() {
        while (stuck && freed.getCount() > 0) {
            Await.pause();
        }
        return Statuses.NOTHING_HEARD;
    }

    private FrameLoop loop() {
        Config config = Configs.of(2, "RGB", "");
        Chain chain = Chain.of(config);
        FrameLoop.Rig rig = new FrameLoop.Rig(chain, new FrameSlot(6, 0), new FrameTap(config), () -> {});
        return new FrameLoop(
                rig, this::status, () -> Wishes.NONE, System::nanoTime, 60, StatusWatch.NOBODY, System.nanoTime());
    }

    @Test
    void getsNoSignOfLifeThroughUntilItGoesOn() {
        FrameLoop loop = loop();
        try (NotifyReceiver manager =
                        new NotifyReceiver(folder.resolve("notify").toString());
                ServiceWatch watch = ServiceWatch.of(
                        Map.of("NOTIFY_SOCKET", manager.name(), "WATCHDOG_USEC", WATCHDOG_MICROS),
                        () -> loop.snapshot().frames(),
                        () -> "look " + looks.incrementAndGet())) {
            loop.start();
            watch.start();
            manager.await(0, "WATCHDOG=1");
            stuck = true;
            long made = framesWhenStill(loop);
            awaitLooks(2);
            int before = manager.lines().size();
            awaitLooks(5);
            assertEquals(made, loop.snapshot().frames());
            assertEquals(
                    0,
                    manager.lines().subList(before, manager.lines().size()).stream()
                            .filter("WATCHDOG=1"::equals)
                            .count());
            freed.countDown();
            manager.await(before, "WATCHDOG=1");
        } finally {
            loop.close();
        }
    }

    /** The loop is inside {@link #status} when two checks of the watch find the same number of frames. */
    private long framesWhenStill(FrameLoop loop) {
        long made;
        do {
            made = loop.snapshot().frames();
            awaitLooks(3);
        } while (loop.snapshot().frames() != made);
        return made;
    }

    private void awaitLooks(int more) {
        int wanted = looks.get() + more;
        Await.until("looks of the watch", () -> looks.get() >= wanted);
    }
}
