package dev.lampwright.guard;

import static dev.lampwright.testing.Bounds.assertAbove;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Both limits at once. */
class GuardsTest {
    private static final int RATE = 30;

    /** Light within both limits is sent unchanged. */
    @Test
    void calmLightPasses() {
        Fitted fitted = Fitted.strip(30, 1500, Map.of("bed", Zone.run(0, 14), "job", Zone.run(15, 29)));
        Guards guards = new Guards(fitted.setup(), fitted.fitting(), GuardSettings.USUAL, RATE);
        for (int i = 0; i < 20 * RATE; i++) {
            int level = (int) (127 + 120 * Math.sin(2 * Math.PI * i / RATE));
            Frame frame = fitted.filled(level);
            guards.hold(frame, nanos(i));
            assertArrayEquals(fitted.filled(level).strip(), frame.strip(), "frame " + i);
        }
        assertEquals(0, guards.dimmedFrames());
        assertEquals(0, guards.heldFrames());
    }

    /**
     * A zone that is held bright while another becomes bright would be over the ceiling together: 8 and 8 pixels of 36 mA, of which the
     * ceiling allows half.
     */
    @Test
    void holdingNeverBreaksTheCeiling() {
        Fitted fitted = Fitted.strip(16, 16 + 8 * 36, Map.of("bed", Zone.run(0, 7), "job", Zone.run(8, 15)));
        Guards guards = new Guards(fitted.setup(), fitted.fitting(), GuardSettings.USUAL, RATE);
        for (int i = 0; i < 10 * RATE; i++) {
            Frame frame = fitted.frame();
            boolean bed = i / 3 % 2 == 0;
            Arrays.fill(frame.strip(), bed ? 0 : 24, bed ? 24 : 48, (byte) 255);
            guards.hold(frame, nanos(i));
            assertTrue(fitted.isUnderTheCeilings(frame), "frame " + i);
            assertTrue(lit(frame), "frame " + i);
        }
        assertAbove(5 * RATE, guards.heldFrames());
    }

    @Test
    void flashingCanBeAllowedButNotTheCeilingBroken() {
        Fitted fitted = Fitted.strip(10, 100, Map.of());
        GuardSettings settings = new GuardSettings(Optional.empty(), 2, true, List.of());
        Guards guards = new Guards(fitted.setup(), fitted.fitting(), settings, RATE);
        int changes = 0;
        int before = 0;
        for (int i = 0; i < 2 * RATE; i++) {
            Frame frame = fitted.filled(i % 2 * 255);
            guards.hold(frame, nanos(i));
            assertTrue(fitted.isUnderTheCeilings(frame));
            changes += (frame.strip()[0] & 0xFF) != before ? 1 : 0;
            before = frame.strip()[0] & 0xFF;
        }
        assertEquals(2 * RATE - 1, changes);
        assertEquals(0, guards.heldFrames());
    }

    /** The count of flashes goes on when a configuration is read again. */
    @Test
    void newGuardsForTheSameLightsGoOn() {
        Fitted fitted = Fitted.strip(10, Map.of());
        EverySecond counter = new EverySecond(fitted.setup(), fitted.fitting(), List.of(5.0));
        Guards guards = new Guards(fitted.setup(), fitted.fitting(), GuardSettings.USUAL, RATE);
        for (int i = 0; i < 4 * RATE; i++) {
            if (i % 4 == 0) {
                GuardSettings settings = new GuardSettings(Optional.empty(), 1 + i, false, List.of());
                Guards next = new Guards(fitted.setup(), fitted.fitting(), settings, RATE);
                next.takeOver(guards);
                guards = next;
            }
            Frame frame = fitted.filled(i % 2 * 255);
            guards.hold(frame, nanos(i));
            counter.see(frame, nanos(i));
        }
        assertEquals(3, counter.most());
    }

    @Test
    void allocatesNothing() {
        Fitted fitted = Fitted.strip(300, 3000, Map.of("bed", Zone.run(0, 149), "job", Zone.run(299, 150)));
        Guards guards = new Guards(fitted.setup(), fitted.fitting(), GuardSettings.USUAL, RATE);
        List<Frame> frames = new ArrayList<>();
        SplittableRandom chance = new SplittableRandom(8);
        for (int i = 0; i < 50; i++) {
            frames.add(fitted.filled(chance.nextInt(256)));
        }
        Frame frame = fitted.frame();
        long last = run(guards, frames, frame, 0, 20_000);
        com.sun.management.ThreadMXBean threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        run(guards, frames, frame, last, 2000);
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertTrue(allocated < 2000, allocated + " bytes in 2000 frames");
    }

    private static long run(Guards guards, List<Frame> frames, Frame frame, long first, int count) {
        long tick = first;
        for (; tick < first + count; tick++) {
            frame.copyFrom(frames.get((int) (tick % frames.size())));
            guards.hold(frame, nanos(tick));
        }
        return tick;
    }

    private static boolean lit(Frame frame) {
        for (byte value : frame.strip()) {
            if (value != 0) {
                return true;
            }
        }
        return false;
    }

    private static long nanos(long tick) {
        return TimeUnit.SECONDS.toNanos(tick) / RATE;
    }
}
