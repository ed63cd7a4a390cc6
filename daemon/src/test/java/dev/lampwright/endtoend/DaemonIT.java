package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.demo.MemoryController.Light;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Recording.Entry;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What the printer reports arrives as the right light, and nothing that anybody sends turns it off. */
@Tag("alone")
@Timeout(120)
class DaemonIT extends SharedBench {
    /** What the product promises: how soon the light is right after a problem has been fixed. */
    private static final Duration RIGHT_AGAIN = Duration.ofSeconds(2);

    private static final int FULL_DUTY = 65_535;
    private static final int FLOOD = 5_000;
    private static final byte[] THREE_MEGABYTES = new byte[3 << 20];

    DaemonIT() {
        super(Birch.withoutFlashLimit());
    }

    @AfterEach
    void everyFrameKeptTheCeiling() {
        List<Entry> frames = bench.controller().recording().entries().stream()
                .filter(Entry::fromHost)
                .toList();
        assertFalse(frames.isEmpty());
        for (Entry frame : frames) {
            assertEquals(Light.WHOLE, frame.light(), "left to the controller to dim: " + frame);
            assertTrue(Birch.milliamps(frame.strip()) <= Birch.CEILING_MILLIAMPS, () -> "over the ceiling: " + frame);
        }
    }

    @Test
    void heatUpsAreBarsThatEndWithinAPixel() {
        birch.tellHeat(Birch.ROOM_C, 62, Birch.ROOM_C, 222);
        birch.tellJob(Birch.WARMING, 0);
        bench.awaitPicture(Birch.warming(0, 0));
        birch.tellHeat(36, 62, 107, 222);
        bench.awaitPicture(Birch.warming((36 - 22) / 40.0, (107 - 22) / 200.0));
        assertEquals(
                Math.round(0.25 * FULL_DUTY),
                bench.controller().recording().last().duties().get(0).longValue());
        birch.tellHeat(62, 62, 222, 222);
        bench.awaitPicture(Birch.warming(1, 1));
    }

    @Test
    void progressFillsItsZoneFromTheFarEnd() {
        birch.tellJob(Birch.PRINTING, 33);
        bench.awaitPicture(Birch.printing(0.33));
        assertEquals(List.of(FULL_DUTY), bench.controller().recording().last().duties());
    }

    @Test
    void progressMovesWithoutAStepToBeSeen() {
        birch.tellJob(Birch.PRINTING, 0);
        bench.awaitPicture(Birch.printing(0));
        long told = System.nanoTime();
        Await.until("more than a second between two messages", () -> System.nanoTime() - told > 1_200_000_000L);
        bench.controller().recording().clear();
        birch.tellJob(Birch.PRINTING, 80);
        bench.awaitPicture(Birch.printing(0.8));
        assertSmooth(bench.controller().recording().entries());
    }

    /**
     * The bar takes as long as the interval between messages, over a second, so at 60 frames a second one step is less than a sixtieth of
     * the way. A third leaves room for a machine that stands still for a third of a second; without smoothing it would be the whole way.
     */
    private static void assertSmooth(List<Entry> frames) {
        List<Integer> levels = frames.stream()
                .map(frame -> frame.strip().stream().mapToInt(Integer::intValue).sum())
                .toList();
        int way = Collections.max(levels);
        List<Integer> steps = IntStream.range(1, levels.size())
                .mapToObj(i -> levels.get(i) - levels.get(i - 1))
                .toList();
        assertTrue(Collections.min(steps) >= 0, () -> "moved back: " + levels);
        assertTrue(Collections.max(steps) <= way / 3, () -> "jumped: " + levels);
        assertTrue(levels.stream().distinct().count() >= 10, () -> "too few places between: " + levels);
    }

    @Test
    void aFaultIsSeenAtOnce() {
        birch.tellJob(Birch.FAULT, 0);
        bench.awaitPicture(Birch.still(Birch.FAULT), Duration.ofMillis(500));
    }

    @Test
    void whatWouldBeOverTheCeilingIsDimmedAlike() {
        birch.tellJob(Birch.DONE, 100);
        int room = Birch.CEILING_MILLIAMPS - Picture.PIXELS * Birch.DARK_MILLIAMPS;
        int most = room * 255 / (3 * Picture.PIXELS * Birch.CHANNEL_MILLIAMPS);
        bench.awaitFrame(
                "as bright as the ceiling allows: " + most,
                frame -> frame.strip().equals(Collections.nCopies(3 * Picture.PIXELS, most)),
                RIGHT_AGAIN);
    }

    @Test
    void whatMakesNoSenseChangesNothing() {
        birch.tellJob(Birch.HELD, 50);
        bench.awaitPicture(Birch.still(Birch.HELD));
        bench.controller().recording().clear();
        for (String message : List.of(
                "",
                "{",
                "[]",
                "null",
                "\u0000\uffff",
                "{\"phase\":{}}",
                "{\"phase\":7,\"percent\":\"lots\"}",
                "{\"percent\":-400}")) {
            bench.broker().publish(Birch.JOB, message, false);
            bench.broker().publish(Birch.HEAT, message, false);
        }
        bench.broker().publish("shop/birch", Birch.job(Birch.FAULT, 0), false);
        bench.broker().publish("shop/birch/job/2", Birch.job(Birch.FAULT, 0), false);
        bench.broker().publish(Birch.JOB, THREE_MEGABYTES, false);
        int before = bench.controller().recording().size();
        birch.tellJob(Birch.STOPPED, 50);
        bench.awaitPicture(Birch.still(Birch.STOPPED), RIGHT_AGAIN);
        assertTrue(bench.controller().recording().entries().subList(0, before).stream()
                .allMatch(frame -> Birch.still(Birch.HELD).isOn(frame.strip())));
    }

    @Test
    void aFloodPassesAndTheLastWordCounts() {
        List<String> flood = IntStream.range(0, FLOOD)
                .mapToObj(i -> Birch.job(i % 2 == 0 ? Birch.HELD : Birch.STOPPED, i % 100))
                .toList();
        bench.broker().publishAll(Birch.JOB, flood);
        birch.tellJob(Birch.FAULT, 0);
        bench.awaitPicture(Birch.still(Birch.FAULT), RIGHT_AGAIN);
    }
}
