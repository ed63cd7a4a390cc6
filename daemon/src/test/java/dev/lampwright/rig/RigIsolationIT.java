package dev.lampwright.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import dev.lampwright.cue.Wishes;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.Delivery;
import dev.lampwright.engine.Early;
import dev.lampwright.engine.StatusWatch;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.Statuses;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CapturedLog;
import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.Mosquitto;
import java.nio.file.Path;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * One of eight rigs has every kind of trouble, one after another; the other seven miss no frame, stay within their ceilings, answer asks,
 * and hear their printers. Whatever the machine itself delayed does not count.
 */
@Timeout(120)
@TestMethodOrder(MethodOrderer.MethodName.class)
class RigIsolationIT {
    private static final int FRAMES_PER_SECOND = 20;
    private static final long TICK_NANOS = TimeUnit.SECONDS.toNanos(1) / FRAMES_PER_SECOND;
    private static final String UNLUCKY = "alder";
    private static final List<String> OTHERS = List.of("birch", "rowan", "oak", "elm", "ash", "lime", "yew");

    @TempDir
    private static Path folder;

    /** The clock that the watch over rigs uses. It runs only when a test moves it, so no test waits for it. */
    private static final AtomicLong WATCHED_NANOS = new AtomicLong();

    private static final Heartbeat HEARTBEAT = new Heartbeat();
    private static final Stuck STUCK = new Stuck();
    private static Mosquitto broker;
    private static TestShop shop;

    /** What blocks the frame loop. */
    private static final class Stuck implements StatusWatch {
        private volatile boolean on;
        private final CountDownLatch freed = new CountDownLatch(1);

        @Override
        public void start(long firstFrameNanos) {}

        @Override
        public void shown(long tick, Statuses statuses) {
            while (on && freed.getCount() > 0) {
                LockSupport.parkNanos(TICK_NANOS);
            }
        }

        @Override
        public void asked(long tick, Wishes wishes) {}

        @Override
        public void leftOut(long tick, long count) {}

        @Override
        public void delivered(Delivery delivery) {}

        @Override
        public void early(Early early) {}
    }

    /** What the seven had done when the trouble began. */
    private static final class Before {
        private final long nanos = System.nanoTime();
        private final Map<String, Long> skipped = new HashMap<>();
        private final Map<String, Long> frames = new HashMap<>();
        private final Map<String, Daemon> daemons = new HashMap<>();

        Before() {
            for (String name : OTHERS) {
                skipped.put(name, shop.daemon(name).frames().snapshot().skipped());
                frames.put(name, shop.daemon(name).frames().snapshot().frames());
                daemons.put(name, shop.daemon(name));
            }
        }

        void requireNothingHappenedToTheOthers() {
            for (String name : OTHERS) {
                Daemon daemon = shop.daemon(name);
                assertSame(daemons.get(name), daemon, name);
                assertEquals("", shop.rigs().find(name).orElseThrow().trouble(), name);
                long left = daemon.frames().snapshot().skipped() - skipped.get(name);
                long waited = HEARTBEAT.sumBetween(nanos, System.nanoTime());
                assertTrue(
                        left <= (waited + TICK_NANOS - 1) / TICK_NANOS,
                        () -> name + " left out " + left + " frames, and the machine stood still for " + waited
                                + " ns");
                assertEquals(0, shop.at(name).over(), name + " went over its ceiling");
                long shown = shop.at(name).shown();
                Await.until(name + " goes on", () -> shop.at(name).shown() > shown + 2);
                assertTrue(daemon.desk().ask("brightness", "0.9").done(), name);
            }
            Daemon birch = shop.daemon("birch");
            long messages = birch.messages();
            broker.publish("shop/birch/job", "RUN", false);
            Await.until(
                    "birch hears its printer",
                    () -> birch.messages() > messages
                            && birch.statuses().of(Statuses.UNNAMED).state() == PrinterState.PRINTING);
        }
    }

    @BeforeAll
    static void start() throws ConfigException {
        broker = Mosquitto.start();
        HEARTBEAT.start();
        shop = new TestShop(folder, broker.url(), FRAMES_PER_SECOND, WATCHED_NANOS::get);
        shop.watch(UNLUCKY, STUCK);
        shop.rig(UNLUCKY, "");
        OTHERS.forEach(name -> shop.rig(name, ""));
        shop.read().awaitLit(UNLUCKY).awaitLit(OTHERS.toArray(String[]::new));
    }

    @AfterAll
    static void end() {
        STUCK.freed.countDown();
        shop.close();
        HEARTBEAT.close();
        broker.close();
    }

    private static TroubledLine line() {
        return shop.at(UNLUCKY).line();
    }

    private static void awaitLit() {
        long shown = shop.at(UNLUCKY).shown();
        Await.until(UNLUCKY + " is lit again", () -> shop.at(UNLUCKY).shown() > shown + 5);
    }

    /** Advances the clock of the watch by eleven seconds while all but the unlucky rig run. */
    private static void letTheWatchSeeTenSeconds() {
        for (int seconds = 0; seconds < 11; seconds++) {
            if (seconds % 4 == 0) {
                OTHERS.forEach(name -> {
                    long pulse = shop.daemon(name).pulse();
                    Await.until(name + " goes on", () -> shop.daemon(name).pulse() > pulse);
                });
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(600));
            }
            WATCHED_NANOS.addAndGet(TimeUnit.SECONDS.toNanos(1));
            shop.rigs().lookAround();
        }
    }

    @Test
    void aPortThatIsGone() {
        Before before = new Before();
        line().have(TroubledLine.Trouble.GONE);
        Await.until(
                "it is noticed", () -> !shop.daemon(UNLUCKY).link().trouble().isEmpty());
        before.requireNothingHappenedToTheOthers();
        line().have(TroubledLine.Trouble.NONE);
        awaitLit();
    }

    @Test
    void aControllerThatLies() {
        Before before = new Before();
        long garbled = shop.daemon(UNLUCKY).link().garbled();
        line().have(TroubledLine.Trouble.LYING);
        Await.until("it is noticed", () -> shop.daemon(UNLUCKY).link().garbled() > garbled + 20);
        before.requireNothingHappenedToTheOthers();
        line().have(TroubledLine.Trouble.NONE);
        awaitLit();
    }

    @Test
    void aPrinterThatFloods() {
        Before before = new Before();
        broker.publishAll("shop/" + UNLUCKY + "/job", Collections.nCopies(20_000, "RUN"));
        Await.until("it is heard", () -> shop.daemon(UNLUCKY).messages() > 500);
        before.requireNothingHappenedToTheOthers();
    }

    /** Threads of a rig have its name behind theirs. Each needs some 110 KiB, so a rig has no more than it cannot do without. */
    @Test
    void aRigHasTwoThreadsAndSharesAllOthers() {
        List<String> names = Thread.getAllStackTraces().keySet().stream()
                .map(Thread::getName)
                .toList();
        assertEquals(
                List.of("frames birch", "link birch"),
                names.stream().filter(name -> name.endsWith(" birch")).sorted().toList(),
                names::toString);
        assertEquals(2, names.stream().filter("printer"::equals).count(), names::toString);
        assertEquals(1, names.stream().filter("wills"::equals).count(), names::toString);
    }

    @Test
    void aFileThatIsNotRight() throws ConfigException {
        Before before = new Before();
        shop.rig(UNLUCKY, "strip = [").read();
        assertTrue(shop.rigs().find(UNLUCKY).orElseThrow().trouble().startsWith("its file is rejected"));
        before.requireNothingHappenedToTheOthers();
        shop.rig(UNLUCKY, "").read();
    }

    @Test
    void aLinkThatIsStuck() {
        Before before = new Before();
        line().have(TroubledLine.Trouble.STUCK);
        long shown = shop.at(UNLUCKY).shown();
        before.requireNothingHappenedToTheOthers();
        assertTrue(shop.at(UNLUCKY).shown() <= shown + 2, "nothing more gets through");
        line().have(TroubledLine.Trouble.NONE);
        awaitLit();
    }

    @Test
    void looksThatFail() throws ConfigException {
        Before before = new Before();
        try (CapturedLog log = new CapturedLog("dev.lampwright.engine")) {
            shop.startAgain(UNLUCKY, true);
            Await.until("it is told", () -> log.lines().stream().anyMatch(line -> line.contains("cannot be drawn")));
        }
        before.requireNothingHappenedToTheOthers();
        assertEquals("", shop.rigs().find(UNLUCKY).orElseThrow().trouble(), "the rest of it goes on");
        shop.startAgain(UNLUCKY, false);
        awaitLit();
    }

    /** It is abandoned and replaced; the light continues with the new one. */
    @Test
    void wedgedFrames() {
        Before before = new Before();
        Daemon wedged = shop.daemon(UNLUCKY);
        STUCK.on = true;
        broker.publish("shop/" + UNLUCKY + "/job", "RUN", false);
        broker.publish("shop/" + UNLUCKY + "/job", "OTHER", false);
        Await.until("it stands still", () -> {
            long frames = wedged.frames().snapshot().frames();
            LockSupport.parkNanos(4 * TICK_NANOS);
            return frames == wedged.frames().snapshot().frames();
        });
        letTheWatchSeeTenSeconds();
        STUCK.on = false;
        Await.until("another daemon", () -> shop.rigs().daemons().getOrDefault(UNLUCKY, wedged) != wedged);
        before.requireNothingHappenedToTheOthers();
        awaitLit();
        assertNotSame(wedged, shop.daemon(UNLUCKY));
        shop.rigs().lookAround();
        assertEquals("", shop.rigs().find(UNLUCKY).orElseThrow().trouble(), "it runs again");
    }
}
