package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.colour.CssColour;
import dev.lampwright.config.Config;
import dev.lampwright.cue.Condition;
import dev.lampwright.cue.Cue;
import dev.lampwright.cue.Easing;
import dev.lampwright.cue.Wishes;
import dev.lampwright.link.FrameSlot;
import dev.lampwright.look.Blend;
import dev.lampwright.look.Extent;
import dev.lampwright.look.Layer;
import dev.lampwright.look.Level;
import dev.lampwright.look.Look;
import dev.lampwright.look.Paint;
import dev.lampwright.look.Rhythm;
import dev.lampwright.look.Zone;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.CapturedLog;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

/** With a layer that fails, frames go on, states go on to be shown, and the log tells it once. */
class FaultyLookTest {
    private final Config config = Configs.of(2, "RGB", "");

    private static Layer layer(int pixel, Paint paint) {
        return new Layer(Zone.run(pixel, pixel), paint, Extent.all(), Rhythm.FIXED, Level.fixed(1), Blend.NORMAL);
    }

    private static Paint solid(String colour) {
        return Paint.solid(CssColour.colour(colour));
    }

    private List<Cue> cues() {
        Paint burnt = (moment, rgba, pixels) -> {
            throw new IllegalStateException("burnt");
        };
        Look odd = new Look("odd", List.of(layer(0, solid("red")), layer(1, burnt)), List.of(), false);
        Look sound = new Look("sound", List.of(layer(0, solid("blue")), layer(1, solid("lime"))), List.of(), false);
        Condition isFault = Condition.state(Set.of(PrinterState.FAULT));
        return List.of(new Cue(sound, List.of(isFault), 0, Easing.LINEAR), new Cue(odd, List.of(), 0, Easing.LINEAR));
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
        assertTrue(lines.get(0).endsWith("the rest goes on"), lines.get(0));
    }

    private void assertFramesGoOn() {
        FrameSlot slot = new FrameSlot(6, 0);
        AtomicReference<PrinterStatus> status = new AtomicReference<>(PrinterStatus.nothingHeard());
        FrameLoop loop = new FrameLoop(
                new FrameLoop.Rig(Chain.of(config, cues()), slot, new FrameTap(config), () -> {}),
                status::get,
                () -> Wishes.NONE,
                System::nanoTime,
                200,
                StatusWatch.NOBODY);
        loop.start();
        Await.until("many frames", () -> loop.frames() > 50);
        assertArrayEquals(new byte[] {-1, 0, 0, 0, 0, 0}, slot.take().strip());
        status.set(PrinterStatus.nothingHeard().withState(PrinterState.FAULT, System.nanoTime()));
        Await.until("the other state", () -> loop.state() == PrinterState.FAULT);
        long before = loop.frames();
        Await.until("more frames", () -> loop.frames() > before + 2);
        loop.close();
        Frame last = slot.take();
        assertArrayEquals(new byte[] {0, 0, -1, 0, -1, 0}, last.strip());
    }
}
