package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.colour.CssColour;
import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
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
import dev.lampwright.protocol.Frame;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CapturedLog;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

/** With a failing layer, frames continue, states are still shown, and it is logged once. */
class FaultyLookTest {
    private final Config config = Configs.of(2, "RGB", "");

    private static LayerSpec layer(int pixel, String colour) {
        return new LayerSpec(
                Zone.run(pixel, pixel),
                new SolidPaint(CssColour.colour(colour)),
                new AllExtent(),
                Rhythm.FIXED,
                Level.fixed(1),
                Blend.NORMAL);
    }

    /** The look "odd" has a layer on a pixel that is not fitted. */
    private LightSpec light() {
        LookSpec odd = new LookSpec("odd", List.of(layer(0, "red"), layer(2, "white")), List.of(), false);
        LookSpec sound = new LookSpec("sound", List.of(layer(0, "blue"), layer(1, "lime")), List.of(), false);
        Condition isFault = new Condition.InState(Set.of(PrinterState.FAULT));
        return config.light()
                .showing(List.of(
                        new CueSpec(sound, List.of(isFault), 0, Easing.LINEAR),
                        new CueSpec(odd, List.of(), 0, Easing.LINEAR)));
    }

    @Test
    void theRestGoesOnAndTheLogTellsItOnce() {
        List<String> lines;
        try (CapturedLog log = new CapturedLog(FrameLoop.class.getName())) {
            assertFramesGoOn();
            lines = log.lines();
        }
        assertEquals(1, lines.size(), lines.toString());
        assertTrue(lines.get(0).startsWith("ERROR looks.odd.layers.1 cannot be drawn: "), lines.get(0));
        assertTrue(lines.get(0).endsWith("everything else carries on"), lines.get(0));
    }

    /** README, problems are logged when they begin: a new configuration's first broken layer is a new one. */
    @Test
    void aBrokenLayerOfTheNextConfigurationIsLoggedToo() {
        FrameLoop.Rig next = rig(Chain.of(config.setup(), brokenLook("newer"), 200));
        try (CapturedLog log = new CapturedLog(FrameLoop.class.getName())) {
            FrameLoop loop = loop(rig(Chain.of(config.setup(), brokenLook("older"), 200)));
            loop.start();
            Await.until("the first", () -> !log.lines().isEmpty());
            loop.change(next);
            Await.until("the second", () -> log.lines().size() > 1);
            loop.close();
            assertEquals(2, log.lines().size(), log.lines().toString());
            assertTrue(log.lines().get(0).startsWith("ERROR looks.older.layers.0 cannot be drawn: "));
            assertTrue(log.lines().get(1).startsWith("ERROR looks.newer.layers.0 cannot be drawn: "));
        }
    }

    private LightSpec brokenLook(String name) {
        LookSpec broken = new LookSpec(name, List.of(layer(2, "white")), List.of(), false);
        return config.light().showing(List.of(new CueSpec(broken, List.of(), 0, Easing.LINEAR)));
    }

    private FrameLoop.Rig rig(Chain chain) {
        return new FrameLoop.Rig(chain, new FrameSlot(6, 0), new FrameTap(config), () -> {});
    }

    private static FrameLoop loop(FrameLoop.Rig rig) {
        return new FrameLoop(
                rig,
                () -> Statuses.NOTHING_HEARD,
                () -> Wishes.NONE,
                System::nanoTime,
                200,
                StatusWatch.NOBODY,
                System.nanoTime());
    }

    /** A frame that cannot be made is logged once, and again if it recurs after frames have continued. */
    @Test
    void aSecondFailureOfFramesIsLoggedToo() {
        try (CapturedLog log = new CapturedLog(FrameLoop.class.getName())) {
            FrameLoop loop = loop(soundRig());
            loop.start();
            for (int failure = 1; failure <= 2; failure++) {
                int failures = failure;
                loop.change(rigThatFails());
                Await.until("the failure", () -> log.lines().size() == failures);
                loop.change(soundRig());
                long before = loop.snapshot().frames();
                Await.until("frames again", () -> loop.snapshot().frames() > before + 2);
            }
            loop.close();
            assertEquals(2, log.lines().size(), log.lines().toString());
            log.lines().forEach(line -> assertTrue(line.startsWith("ERROR a frame could not be made"), line));
        }
    }

    private FrameLoop.Rig soundRig() {
        return rig(Chain.of(config));
    }

    /** Its frames are too short for the strip. */
    private FrameLoop.Rig rigThatFails() {
        return new FrameLoop.Rig(Chain.of(config), new FrameSlot(3, 0), new FrameTap(config), () -> {});
    }

    private void assertFramesGoOn() {
        FrameSlot slot = new FrameSlot(6, 0);
        AtomicReference<Statuses> status = new AtomicReference<>(Statuses.NOTHING_HEARD);
        FrameLoop loop = new FrameLoop(
                new FrameLoop.Rig(Chain.of(config.setup(), light(), 200), slot, new FrameTap(config), () -> {}),
                status::get,
                () -> Wishes.NONE,
                System::nanoTime,
                200,
                StatusWatch.NOBODY,
                System.nanoTime());
        loop.start();
        Await.until("many frames", () -> loop.snapshot().frames() > 50);
        assertArrayEquals(new byte[] {-1, 0, 0, 0, 0, 0}, slot.take().strip());
        status.set(Statuses.of(PrinterStatus.nothingHeard().withState(PrinterState.FAULT, System.nanoTime())));
        Await.until("the other state", () -> loop.snapshot().state() == PrinterState.FAULT);
        long before = loop.snapshot().frames();
        Await.until("more frames", () -> loop.snapshot().frames() > before + 2);
        loop.close();
        Frame last = slot.take();
        assertArrayEquals(new byte[] {0, 0, -1, 0, -1, 0}, last.strip());
    }
}
