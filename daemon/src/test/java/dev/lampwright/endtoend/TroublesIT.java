package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Faults;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Whatever breaks at the broker, the cable or the controller: the light recovers by itself, and nothing is left behind. */
@Tag("alone")
@Timeout(300)
class TroublesIT {
    /** What the product promises: how soon the light is right after a problem has been fixed. */
    private static final long RIGHT_AGAIN_NANOS = Duration.ofSeconds(2).toNanos();

    /**
     * How much resident memory may grow, in KiB, over a second round of all troubles: the heap is limited like the service's, and compiled
     * code and the runtime's own tables still grow a little. Common practice, no source.
     */
    private static final long MARGIN_KIB = 8 * 1024;

    /** The line is retried after a second at most. */
    private static final long VAIN_ATTEMPTS_NANOS = Duration.ofMillis(2500).toNanos();

    /** Length of the time at the beginning of a log line. */
    private static final int TIME_CHARS = "00:00:00 ".length();

    private static final String CONNECTED = ": connected";
    private static final String LIT = " is lit";
    private static final String GARBLED = " are getting lost or corrupted";
    private static final String PASS_AGAIN = " are getting through again";
    private static final Pattern OUTAGE = Pattern.compile(
            "has disappeared|no port|gone silent|no controller answers|accepted no bytes|does not answer the set-up request");

    private static final List<String> PHASES = List.of(Birch.FAULT, Birch.HELD, Birch.STOPPED, Birch.IDLE);

    @TempDir
    private Path folder;

    private Bench bench;
    private int told;

    /**
     * Something that goes wrong.
     *
     * @param cause causes it, and waits until the daemon is affected
     * @param cure ends it
     * @param allWell what the log says when it is over; empty if it is not logged, or its end is logged later
     */
    private record Trouble(Runnable cause, Runnable cure, String allWell) {}

    @BeforeEach
    void start() {
        bench = new Bench(folder, Mosquitto.start(), List.of(), "-Xmx64m", "-XX:+UseSerialGC");
    }

    @AfterEach
    void stop() {
        bench.close();
    }

    private List<Trouble> troubles() {
        PtyController controller = bench.controller();
        Runnable nothing = () -> {};
        return List.of(
                new Trouble(this::killBroker, bench.broker()::restart, CONNECTED),
                new Trouble(this::unplug, controller::plug, LIT),
                new Trouble(this::mute, () -> controller.mute(false), LIT),
                new Trouble(this::freeze, controller::thaw, LIT),
                new Trouble(controller::reset, nothing, ""),
                new Trouble(this::sendGarbage, nothing, ""),
                new Trouble(this::tear, this::restore, ""));
    }

    private void killBroker() {
        int before = bench.daemon().lines();
        bench.broker().kill();
        awaitLine(before, "broker");
    }

    private void unplug() {
        int before = bench.daemon().lines();
        bench.controller().unplug();
        awaitLine(before, "plug");
        long pulled = System.nanoTime();
        Await.until("several vain attempts to open it", () -> System.nanoTime() - pulled > VAIN_ATTEMPTS_NANOS);
    }

    private void mute() {
        int before = bench.daemon().lines();
        bench.controller().mute(true);
        awaitLine(before, "gone silent");
    }

    private void freeze() {
        int before = bench.daemon().lines();
        bench.controller().freeze();
        awaitLine(before, "controller");
    }

    private void sendGarbage() {
        byte[] garbage = new byte[5_000];
        new Random(1).nextBytes(garbage);
        bench.controller().sendGarbage(garbage);
    }

    private void tear() {
        bench.controller().fromHost(Faults.all(1, 0.002));
        bench.controller().toHost(Faults.all(2, 0.002));
        int before = bench.controller().recording().size();
        Await.until(
                "frames that came through", () -> bench.controller().recording().size() > before + 20);
    }

    private void restore() {
        bench.controller().fromHost(Faults.none());
        bench.controller().toHost(Faults.none());
    }

    /** Waits long enough for a trouble that recurs within a minute, which is logged when the minute is over. */
    private void awaitLine(int from, String text) {
        Await.until(
                () -> "the log says " + text + ": " + bench.daemon().log(),
                () -> !bench.daemon().linesWith(from, text).isEmpty(),
                Duration.ofSeconds(80));
    }

    @Test
    void theLightComesBackAndNothingGrows() {
        awaitLine(0, LIT);
        int start = bench.daemon().lines();
        goThroughAll();
        long residentKib = bench.daemon().residentKib();
        List<String> threads = bench.daemon().threads();
        List<String> descriptors = bench.daemon().descriptors();
        goThroughAll();
        awaitSame("threads", threads, bench.daemon()::threads);
        awaitSame("file descriptors", descriptors, bench.daemon()::descriptors);
        long grown = bench.daemon().residentKib() - residentKib;
        assertTrue(grown <= MARGIN_KIB, () -> grown + " KiB more than " + residentKib);
        assertEachToldOnce(start);
    }

    private static void awaitSame(String what, List<String> before, Supplier<List<String>> now) {
        Await.until(
                () -> "the same " + what + ": " + before + " became " + now.get(),
                () -> now.get().equals(before),
                Duration.ofSeconds(20));
    }

    private void goThroughAll() {
        for (Trouble trouble : troubles()) {
            bench.controller().recording().clear();
            int before = bench.daemon().lines();
            trouble.cause.run();
            trouble.cure.run();
            long restored = System.nanoTime();
            String phase = PHASES.get(told++ % PHASES.size());
            bench.birch().tellJob(phase, 0);
            long left = RIGHT_AGAIN_NANOS - (System.nanoTime() - restored);
            bench.awaitPicture(Birch.still(phase), Duration.ofNanos(left));
            if (!trouble.allWell.isEmpty()) {
                awaitLine(before, trouble.allWell);
            }
            assertNoneOverTheCeiling();
        }
    }

    private void assertEachToldOnce(int start) {
        List<String> log = bench.daemon().linesWith(start, "");
        assertToldOnce(log, line -> line.contains("WARN") && line.contains("broker"), CONNECTED);
        assertToldOnce(log, line -> OUTAGE.matcher(line).find(), LIT);
        assertNotToldTwice(log, line -> line.contains(GARBLED), PASS_AGAIN);
    }

    /** Nothing is logged twice before it is over, and its end is logged once. */
    private static void assertToldOnce(List<String> log, Predicate<String> complaint, String allWell) {
        Set<String> open = assertNotToldTwice(log, complaint, allWell);
        assertTrue(open.isEmpty(), () -> "no end told of " + open + " in " + log);
    }

    /** Nothing is logged twice before it is over, and no end is logged without a beginning. Returns what is not over yet. */
    private static Set<String> assertNotToldTwice(List<String> log, Predicate<String> complaint, String allWell) {
        Set<String> open = new HashSet<>();
        int told = 0;
        for (String line : log) {
            if (complaint.test(line)) {
                assertTrue(open.add(line.substring(TIME_CHARS)), () -> "told twice: " + line + " in " + log);
                told++;
            } else if (line.contains(allWell)) {
                assertFalse(open.isEmpty(), () -> "the end of nothing: " + line + " in " + log);
                open.clear();
            }
        }
        assertTrue(told > 0, () -> "nothing told that ends with" + allWell + ": " + log);
        return open;
    }

    private void assertNoneOverTheCeiling() {
        for (Entry shown : bench.controller().recording().entries()) {
            assertTrue(shown.light() != Light.DIMMED, () -> "left to the controller to dim: " + shown);
            assertTrue(Birch.milliamps(shown.strip()) <= Birch.CEILING_MILLIAMPS, () -> "over the ceiling: " + shown);
        }
    }
}
