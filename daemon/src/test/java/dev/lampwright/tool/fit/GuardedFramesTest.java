package dev.lampwright.tool.fit;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import dev.lampwright.protocol.WhenSilent;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Every scene passes the guards, whatever it demands. */
class GuardedFramesTest {
    private static final int RATE = 30;
    private static final long FRAME = 1_000_000_000L / RATE;
    private static final Setup SETUP = new Setup(
            24, "GRB", List.of(20_000, 20_000, 20_000), 1000, 0, 3000, WhenSilent.DARK, List.of(300), List.of());

    private final GuardedFrames frames = new GuardedFrames(SETUP, RATE);
    private final Frame frame = new Frame(SETUP.stripBytes(), 0);
    private long nanos;

    private boolean make(Scene scene) {
        nanos += FRAME;
        return frames.make(scene, 0, nanos, frame);
    }

    @Test
    void noFrameIsOverTheCeiling() {
        SupplyDraw draw = new SupplyDraw(SETUP);
        Random random = new Random(5);
        for (int i = 0; i < 3000; i++) {
            Scene wild = (seconds, wanted) -> random.nextBytes(wanted.strip());
            assertFalse(make(wild), "random light asks for more than the ceiling");
            assertAtMost(draw.limit(0), draw.idle(0) + draw.load(0, frame));
        }
    }

    /** WCAG 2.x, success criterion 2.3.1: three flashes, which are pairs of opposing changes, in any one second. */
    @Test
    void nothingFlashesMoreThanThreeTimesASecond() {
        Scene bright = Scenes.stretch("GRB", 30, 0, 23, "RGB");
        List<Integer> changes = new ArrayList<>();
        int before = 0;
        for (int i = 0; i < 20 * RATE; i++) {
            make(i / 2 % 2 == 0 ? bright : Scene.DARK);
            int now = frame.strip()[0] & 0xFF;
            if (now != before) {
                changes.add(i);
            }
            before = now;
        }
        for (int first = 0; first < changes.size(); first++) {
            int start = changes.get(first);
            long within = changes.stream()
                    .filter(at -> at >= start && at < start + RATE)
                    .count();
            assertTrue(within <= 7, "changes in one second: " + within);
        }
        assertTrue(changes.size() > 3, "something was lit and put out");
    }

    @Test
    void aSceneWithinTheLimitsIsLeftAsItIs() {
        assertTrue(make(Scenes.stretch("GRB", 40, 3, 5, "RG")));
        assertEquals(40, frame.strip()[9]);
    }
}
