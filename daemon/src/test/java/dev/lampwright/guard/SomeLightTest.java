package dev.lampwright.guard;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.guard.RestlessLight.Kind;
import dev.lampwright.guard.RestlessLight.Rgb;
import dev.lampwright.look.Fitting;
import dev.lampwright.protocol.Frame;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A few sequences of each kind, always the same ones, as a quick sample of what {@link FlashLimitTest} tries thousands of times. */
class SomeLightTest {
    private static final int TRIALS = 12;
    private static final int RATE = 30;

    @ParameterizedTest
    @EnumSource
    void neverMoreThanThreeFlashesAndTheRestGoesOn(Kind kind) {
        SplittableRandom chance = new SplittableRandom(kind.name().hashCode());
        long held = 0;
        long changes = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            RestlessLight light = new RestlessLight(
                    kind,
                    9 + chance.nextInt(20),
                    RATE,
                    1 + chance.nextInt(kind == Kind.RIPPLE_ON_DRIFT ? 30 : 3),
                    chance.nextInt(8),
                    1 + chance.nextInt(4),
                    new Rgb(255, chance.nextInt(200), chance.nextInt(60)),
                    new Rgb(0, chance.nextInt(60), 0),
                    trial);
            Fitting fitting = light.fitting(trial);
            Guards guards = new Guards(
                    light.setup(),
                    fitting,
                    new GuardSettings(GuardSettings.USUAL.dimOrder(), 2, false, RestlessLight.VOLTS),
                    RATE);
            EverySecond counter = new EverySecond(light.setup(), fitting, RestlessLight.VOLTS);
            byte[] before = {};
            for (int tick = 0; tick < 3 * RATE; tick++) {
                Frame frame = new Frame(light.setup().stripBytes(), 1);
                light.draw(tick, frame);
                guards.hold(frame, tick * 1_000_000_000L / RATE);
                counter.see(frame, tick * 1_000_000_000L / RATE);
                changes += tick == 0 || Arrays.equals(frame.strip(), before) ? 0 : 1;
                before = frame.strip();
            }
            assertTrue(counter.most() <= 3, kind + " " + trial + ": " + counter.most());
            held += guards.heldFrames();
        }
        assertTrue(held > 0, "some of it is held");
        assertTrue(changes >= TRIALS, "light goes on until it is held");
    }
}
