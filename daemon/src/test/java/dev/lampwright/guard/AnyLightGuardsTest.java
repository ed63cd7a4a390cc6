package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.protocol.Frame;
import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/**
 * Both limits at once, for any light: each frame is calculated again in exact fractions, and the flashes are counted by
 * {@link EverySecond}.
 */
class AnyLightGuardsTest {
    private static final int RATE = 30;
    private static final List<Double> VOLTS = List.of(5.0, 5.0, 5.0, 5.0);

    @Test
    void noFrameIsOverAnyCeilingWhateverIsAskedFor() {
        SplittableRandom chance = new SplittableRandom(21);
        long dimmed = 0;
        long held = 0;
        for (int trial = 0; trial < 400; trial++) {
            Fitted fitted = Fitted.any(chance);
            Guards guards = guards(fitted, chance, chance.nextInt(4) == 0);
            AnyLight light = new AnyLight(fitted, chance);
            for (int i = 0; i < 4 * RATE; i++) {
                Frame frame = light.next();
                guards.hold(frame, nanos(i));
                assertTrue(fitted.isUnderTheCeilings(frame), "trial " + trial + ", frame " + i);
                for (int supply = 0; supply < fitted.setup().ceilingsMilliamps().size(); supply++) {
                    assertEquals(milliamps(fitted, frame, supply), guards.milliamps(supply));
                }
            }
            dimmed += guards.dimmedFrames();
            held += guards.heldFrames();
        }
        assertTrue(dimmed > 10_000 && dimmed < 44_000, dimmed + " of 48000 frames are dimmed");
        assertTrue(held > 5000 && held < 40_000, held + " are held");
    }

    @Test
    void neverMoreThanThreeFlashesInAnySecondWhateverIsAskedFor() {
        SplittableRandom chance = new SplittableRandom(22);
        int flashing = 0;
        for (int trial = 0; trial < 150; trial++) {
            Fitted fitted = Fitted.any(chance);
            Guards guards = guards(fitted, chance, false);
            AnyLight light = new AnyLight(fitted, chance);
            EverySecond before = new EverySecond(fitted.setup(), fitted.fitting(), VOLTS);
            EverySecond after = new EverySecond(fitted.setup(), fitted.fitting(), VOLTS);
            for (int i = 0; i < 4 * RATE; i++) {
                Frame frame = light.next();
                before.see(frame, nanos(i));
                guards.hold(frame, nanos(i));
                after.see(frame, nanos(i));
            }
            assertTrue(after.most() <= 3, "trial " + trial + ": " + after.most());
            flashing += before.most() > 3 ? 1 : 0;
        }
        assertTrue(flashing > 60, flashing + " of 150 would flash too often");
    }

    private static int milliamps(Fitted fitted, Frame frame, int supply) {
        BigInteger[] parts = fitted.exactGrains(frame, supply).divideAndRemainder(BigInteger.valueOf(65_535_000));
        return parts[0].intValueExact() + parts[1].signum();
    }

    private static Guards guards(Fitted fitted, SplittableRandom chance, boolean allowFlashing) {
        Optional<List<String>> order = chance.nextBoolean() ? Optional.of(Fitted.anyOrder(chance)) : Optional.empty();
        GuardSettings settings = new GuardSettings(order, chance.nextDouble(0.1, 5), allowFlashing, List.of());
        return new Guards(fitted.setup(), fitted.fitting(), settings, RATE);
    }

    private static long nanos(long tick) {
        return TimeUnit.SECONDS.toNanos(tick) / RATE;
    }
}
