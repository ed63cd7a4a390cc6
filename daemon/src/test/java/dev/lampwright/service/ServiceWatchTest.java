package dev.lampwright.service;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.testing.Await;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What is reported when, by sd_notify(3) and sd_watchdog_enabled(3). */
@Timeout(30)
class ServiceWatchTest {
    /** So short that the watch checks every 10 ms. */
    private static final long WATCHDOG_MICROS = 40_000;

    private final Heard heard = new Heard();
    private final AtomicLong frames = new AtomicLong();
    private final AtomicInteger looks = new AtomicInteger();

    private static final class Heard implements Datagrams {
        private final List<String> texts = new CopyOnWriteArrayList<>();

        @Override
        public void send(String text) {
            texts.add(text);
        }

        long count(String text) {
            return texts.stream().filter(text::equals).count();
        }

        @Override
        public void close() {
            texts.add("closed");
        }
    }

    private ServiceWatch started(Supplier<String> words) {
        ServiceWatch watch = new ServiceWatch(Optional.of(new Notifier(heard)), WATCHDOG_MICROS, frames::get, () -> {
            looks.incrementAndGet();
            return words.get();
        });
        watch.start();
        return watch;
    }

    @Test
    void isReadyWithTheFirstFrameAndNotBefore() {
        ServiceWatch watch = started(() -> "idle");
        try {
            assertEquals(List.of(), heard.texts);
            frames.incrementAndGet();
            Await.until("ready", () -> heard.count("READY=1\n") == 1);
            assertEquals("READY=1\n", heard.texts.get(0));
            watch.reloaded();
            assertEquals(2, heard.count("READY=1\n"));
        } finally {
            watch.close();
        }
    }

    /** The counter advances once; then it stands still, like that of a loop that hangs. */
    @Test
    void givesASignOfLifeOnlyWhileFramesGoOn() {
        ServiceWatch watch = started(() -> "idle");
        try {
            frames.incrementAndGet();
            Await.until("a sign of life", () -> heard.count("WATCHDOG=1\n") == 1);
            int before = looks.get();
            Await.until("five more looks", () -> looks.get() >= before + 5);
            assertEquals(1, heard.count("WATCHDOG=1\n"));
            frames.incrementAndGet();
            Await.until("another sign of life", () -> heard.count("WATCHDOG=1\n") == 2);
        } finally {
            watch.close();
        }
    }

    @Test
    void tellsTheStatusOnceAndNotAgainWhileItIsTheSame() {
        ServiceWatch watch = started(() -> "idle\nall day");
        try {
            frames.incrementAndGet();
            Await.until("five looks", () -> looks.get() >= 5);
            assertEquals(1, heard.count("STATUS=idle all day\n"));
        } finally {
            watch.close();
        }
    }

    @Test
    void saysThatItStopsAndThenNothing() {
        ServiceWatch watch = started(() -> "idle");
        frames.incrementAndGet();
        Await.until("ready", () -> heard.count("READY=1\n") == 1);
        watch.close();
        watch.close();
        assertEquals(1, heard.count("STOPPING=1\n"));
        assertEquals("closed", heard.texts.get(heard.texts.size() - 1));
    }

    @Test
    void doesNothingWithoutAServiceManager() {
        try (ServiceWatch watch = ServiceWatch.of(Map.of(), frames::get, () -> "idle")) {
            watch.start();
            watch.reloading();
            watch.reloaded();
        }
        assertEquals(List.of(), heard.texts);
    }

    @Test
    void takesTheWatchdogOfThisProcessOnly() {
        String own = Long.toString(ProcessHandle.current().pid());
        assertEquals(30_000_000, ServiceWatch.watchdogMicros(Map.of("WATCHDOG_USEC", "30000000", "WATCHDOG_PID", own)));
        assertEquals(30_000_000, ServiceWatch.watchdogMicros(Map.of("WATCHDOG_USEC", "30000000")));
        assertEquals(0, ServiceWatch.watchdogMicros(Map.of("WATCHDOG_USEC", "30000000", "WATCHDOG_PID", "1")));
        assertEquals(0, ServiceWatch.watchdogMicros(Map.of("WATCHDOG_USEC", "soon")));
        assertEquals(0, ServiceWatch.watchdogMicros(Map.of()));
    }
}
