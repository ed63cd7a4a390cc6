package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Red is tracked only if there has been some within the last second. Light that is not saturated red wanders for seconds, then red and a
 * colour of about the same luminance follow each other quickly, so that only the limit on red flashes can hold them; then it repeats.
 */
class RedAfterCalmTest {
    private static final int RATE = 60;
    private static final int PIXELS = 12;
    private static final int SEQUENCES = 150;

    private final Fitted fitted = Fitted.strip(PIXELS, Map.of("bed", Zone.run(0, 4)));

    @Test
    void noFourthRedFlashGetsThrough() {
        long held = 0;
        for (int seed = 0; seed < SEQUENCES; seed++) {
            Guards guards = new Guards(fitted.setup(), fitted.fitting(), GuardSettings.USUAL, RATE);
            EverySecond counter = new EverySecond(fitted.setup(), fitted.fitting(), List.of(5.0));
            show(new SplittableRandom(seed), guards, counter);
            assertTrue(counter.most() <= 3, counter.most() + " flashes in a second with seed " + seed);
            held += guards.heldFrames();
        }
        assertTrue(held > 0, "without a limit they would have flashed");
    }

    private void show(SplittableRandom chance, Guards guards, EverySecond counter) {
        int tick = 0;
        for (int round = 0; round < 3; round++) {
            double slowness = 8 + chance.nextInt(20);
            int calm = tick + 40 + chance.nextInt(160);
            for (; tick < calm; tick++) {
                leave(orange(tick / slowness), tick, guards, counter);
            }
            int half = 2 + chance.nextInt(8);
            int quick = tick + 30 + chance.nextInt(60);
            for (; tick < quick; tick++) {
                leave(tick / half % 2 == 0 ? frame(120, 0, 0) : frame(60, 18, 10), tick, guards, counter);
            }
        }
    }

    /** Between dim and bright, and never more red than three quarters. */
    private Frame orange(double turn) {
        int red = (int) (110 + 90 * Math.sin(turn));
        return frame(red, red / 3, red / 12);
    }

    private Frame frame(int red, int green, int blue) {
        Frame frame = fitted.filled(0);
        for (int pixel = 0; pixel < PIXELS; pixel++) {
            frame.strip()[3 * pixel] = (byte) red;
            frame.strip()[3 * pixel + 1] = (byte) green;
            frame.strip()[3 * pixel + 2] = (byte) blue;
        }
        return frame;
    }

    private static void leave(Frame frame, int tick, Guards guards, EverySecond counter) {
        long nanos = tick * 1_000_000_000L / RATE;
        guards.hold(frame, nanos);
        counter.see(frame, nanos);
    }
}
