package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signal;
import org.junit.jupiter.api.Test;

class LevelTest {
    private static final Follow PROGRESS = Follow.of(Signal.JOB_PROGRESS);

    private static double at(Level level, double progress) {
        return level.at(Moments.done(progress));
    }

    @Test
    void isDarkBelowAndFullFromAThresholdOn() {
        Level level = Level.between(PROGRESS, 0.2, 0.8);
        assertEquals(0, at(level, 0.19));
        assertEquals(0.2, at(level, 0.2), 1e-9);
        assertEquals(0.5, at(level, 0.5), 1e-9);
        assertEquals(0.79, at(level, 0.79), 1e-9);
        assertEquals(1, at(level, 0.8));
    }

    @Test
    void twoThresholdsInOnePlaceAreAStep() {
        Level step = Level.between(new Follow(Signal.JOB_PROGRESS, 0.5, 0.5), 0.5, 0.5);
        assertEquals(0, at(step, 0.499));
        assertEquals(1, at(step, 0.5));
    }

    @Test
    void isDarkWhileTheSignalIsUnknown() {
        assertEquals(0, Level.between(PROGRESS, Double.NEGATIVE_INFINITY, 0).at(Moments.after(1)));
    }
}
