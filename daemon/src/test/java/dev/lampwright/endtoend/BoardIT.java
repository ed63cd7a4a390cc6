package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.EmulatedBoard;
import dev.lampwright.testing.EmulatedBoard.Latched;
import dev.lampwright.testing.Firmware;
import dev.lampwright.testing.RunningDaemon;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/**
 * From the printer's message to the pixels: a real broker, the daemon's jar, a device node, the firmware's own machine code, and the
 * waveform read as a strip reads it. On each board, at every supported baud rate.
 */
@Tag("alone")
@Timeout(120)
class BoardIT extends OwnBench {
    /** What the product promises: how soon the light is right after a problem has been fixed. */
    private static final long RIGHT_AGAIN_NANOS = Duration.ofSeconds(2).toNanos();

    private static final long HOLDOVER_MICROS = 3_000_000;
    private static final Duration LONG = Duration.ofSeconds(20);

    private static final long SILENCE_NANOS = Duration.ofMillis(1500).toNanos();

    /** How many bytes are damaged before a bad line is repaired. */
    private static final int HURT_BYTES = 4;

    /** One byte in this many is damaged; a frame of this test has about a hundred. */
    private static final int HURT_EVERY = 200;

    /** Duties of a timer of 8 bits come in steps of this. */
    private static final double DUTY_STEP = 1 / 255.0;

    private static final List<String> PHASES = List.of(Birch.FAULT, Birch.HELD, Birch.STOPPED, Birch.IDLE);

    private EmulatedBoard board;
    private RunningDaemon daemon;
    private int told;

    private void start(Firmware.Build build) {
        board = running(EmulatedBoard.start(build, folder.resolve("board")));
        daemon = running(RunningDaemon.start(birch.configure(folder, board.port(), build.hostBaud())));
        awaitPicture(Birch.silent(), LONG);
    }

    @ParameterizedTest
    @FieldSource("dev.lampwright.testing.Firmware#BUILDS")
    void theStripShowsWhatThePrinterDoesWhateverTheLineDoes(Firmware.Build build) {
        start(build);
        goThroughAJob();
        goThroughTroubles();
        assertNoWrongFrame();
        assertWaveform(board.stats());
        assertEquals(0, daemon.terminate().status());
        assertSaidGoodbye();
    }

    /** Darkness long before the holdover of 3 s is over can only come from a {@code REST}. */
    private void assertSaidGoodbye() {
        Await.until("darkness at the end", () -> board.lastIs(BoardIT::isDark));
        List<Latched> frames = board.frames();
        long pause = frames.get(frames.size() - 1).micros()
                - frames.get(frames.size() - 2).micros();
        assertTrue(pause < HOLDOVER_MICROS / 2, () -> "no goodbye, but darkness after " + pause + " µs");
    }

    private void goThroughAJob() {
        birch.tellHeat(Birch.ROOM_C, 62, Birch.ROOM_C, 222);
        birch.tellJob(Birch.WARMING, 0);
        awaitPicture(Birch.warming(0, 0), LONG);
        birch.tellHeat(36, 62, 107, 222);
        awaitPicture(Birch.warming((36 - 22) / 40.0, (107 - 22) / 200.0), LONG);
        awaitDuty(0.25);
        birch.tellJob(Birch.PRINTING, 33);
        awaitPicture(Birch.printing(0.33), LONG);
        awaitDuty(1);
        birch.tellJob(Birch.FAULT, 33);
        awaitPicture(Birch.still(Birch.FAULT), LONG);
        birch.tellJob(Birch.PRINTING, 33);
        awaitPicture(Birch.printing(0.33), LONG);
    }

    /** A dimmer rises only once the strip has latched, so a frame may still report its old duty. */
    private void awaitDuty(double duty) {
        Await.until(
                "duty " + duty,
                () -> board.lastIs(latched -> Math.abs(latched.duties().get(0) - duty) < DUTY_STEP));
    }

    /**
     * No byte is lost in the board, except when it restarts in the middle of a packet, and after it stood still: then everything that the
     * host has sent in the meantime comes at once, until a new device starts empty.
     */
    private void goThroughTroubles() {
        rightAgainAfter(() -> silence("deaf"), () -> board.command("deaf 0"));
        for (String kind : List.of("drop", "flip", "double")) {
            rightAgainAfter(() -> hurt(kind), () -> restore(kind));
        }
        assertNoByteLostSince(List.of());
        rightAgainAfter(() -> board.command("reset"), () -> {});
        rightAgainAfter(() -> silence("stall"), () -> board.command("stall 0"));
        board.command("unplug");
        List<JsonNode> flooded = board.errors();
        rightAgainAfter(() -> {}, () -> board.command("plug"));
        assertNoByteLostSince(flooded);
    }

    /**
     * Not checked if the machine was so busy that the board fell behind real time and gave it up: then the host gives up waiting too, and
     * its next message comes while the board still drives the strip.
     */
    private void assertNoByteLostSince(List<JsonNode> before) {
        List<JsonNode> errors = board.errors();
        JsonNode stats = board.stats();
        assertTrue(errors.equals(before) || stats.get("lag_us").asDouble() > 0, () -> "bytes lost: " + errors + stats);
    }

    /** For longer than the daemon waits before it opens the line again. */
    private void silence(String command) {
        board.command(command + " 3600000");
        long begun = System.nanoTime();
        Await.until("a long silence", () -> System.nanoTime() - begun > SILENCE_NANOS);
    }

    /** A bad line, both ways, while the light changes. */
    private void hurt(String kind) {
        JsonNode before = board.stats();
        board.command(kind + " down 100000 every " + HURT_EVERY);
        board.command(kind + " up 100000 every " + HURT_EVERY / 4);
        Await.until(
                () -> kind + ": bytes hurt both ways " + board.stats(),
                () -> isHurt(before, board.stats(), "hurt_down") && isHurt(before, board.stats(), "hurt_up"),
                LONG);
    }

    private static boolean isHurt(JsonNode before, JsonNode now, String way) {
        return sum(now.get(way)) - sum(before.get(way)) >= HURT_BYTES;
    }

    private static int sum(JsonNode counts) {
        int sum = 0;
        for (JsonNode count : counts) {
            sum += count.asInt();
        }
        return sum;
    }

    private void restore(String kind) {
        board.command(kind + " down 0");
        board.command(kind + " up 0");
    }

    private void rightAgainAfter(Runnable cause, Runnable cure) {
        String phase = PHASES.get(told++ % PHASES.size());
        cause.run();
        birch.tellJob(phase, 0);
        cure.run();
        awaitPicture(Birch.still(phase), Duration.ofNanos(RIGHT_AGAIN_NANOS));
    }

    private void awaitPicture(Picture picture, Duration deadline) {
        Await.until(
                () -> "the strip shows " + picture + "; last " + board.last() + "; " + daemon.log(),
                () -> board.lastIs(latched -> picture.isOn(latched.strip())),
                deadline);
    }

    /**
     * Every look of the test is one colour everywhere, or bars in fixed places, so any other frame is wrong, except the controller's own
     * darkness. The reset button may cut one frame short, which is then the beginning of a right one.
     */
    private void assertNoWrongFrame() {
        List<Latched> others =
                board.frames().stream().filter(latched -> !isRight(latched)).toList();
        assertTrue(others.size() <= 1, () -> "wrong frames: " + others);
        assertTrue(others.stream().allMatch(BoardIT::isCutShort), () -> "a wrong frame: " + others);
    }

    private static boolean isRight(Latched latched) {
        return latched.faults().isEmpty()
                && (isDark(latched)
                        || stills().anyMatch(picture -> picture.isOn(latched.strip()))
                        || areBars(latched.strip()));
    }

    private static boolean isDark(Latched latched) {
        return latched.strip().stream().allMatch(value -> value == 0);
    }

    private static Stream<Picture> stills() {
        return Stream.concat(Stream.of(Birch.silent()), PHASES.stream().map(Birch::still));
    }

    /** Bars as long as the light in their zones, with nothing next to them, are that strip. */
    private static boolean areBars(List<Integer> strip) {
        return strip.size() == 3 * Picture.PIXELS
                && (Birch.warming(share(strip, 0, 30, 3), share(strip, 30, 60, 1))
                                .isOn(strip)
                        || Birch.printing(share(strip, 60, 90, 1)).isOn(strip));
    }

    /** The share of ten pixels' bytes that are lit, if this many of three channels are. */
    private static double share(List<Integer> strip, int from, int to, int channels) {
        int light = strip.subList(from, to).stream().mapToInt(Integer::intValue).sum();
        return light / (10.0 * channels * 255);
    }

    private static boolean isCutShort(Latched latched) {
        int bytes = latched.strip().size();
        return bytes < 3 * Picture.PIXELS
                && stills().anyMatch(
                                picture -> picture.bytes().subList(0, bytes).equals(latched.strip()));
    }

    /** WS2812B datasheet: 0 code 0.4 and 0.85 µs, 1 code 0.8 and 0.45 µs, ±150 ns; reset over 280 µs in its later issues. */
    private static void assertWaveform(JsonNode stats) {
        assertPulse(stats, "t0h_ns", 400);
        assertPulse(stats, "t0l_ns", 850);
        assertPulse(stats, "t1h_ns", 800);
        assertPulse(stats, "t1l_ns", 450);
        assertTrue(stats.get("shortest_gap_us").asDouble() > 280, stats::toString);
    }

    private static void assertPulse(JsonNode stats, String key, int nanos) {
        assertEquals(nanos, stats.get(key).get(0).asDouble(), 150, key);
        assertEquals(nanos, stats.get(key).get(1).asDouble(), 150, key);
    }
}
