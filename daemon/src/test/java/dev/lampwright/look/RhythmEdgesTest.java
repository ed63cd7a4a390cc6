package dev.lampwright.look;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RhythmEdgesTest {
    /** Light appears and disappears within a tenth of a second, so in a 60th it changes by a sixth at most; a swell by less. */
    @ParameterizedTest
    @ValueSource(strings = {"F", "Iso 2s", "Oc 4s", "Fl 3s", "Fl(2) 6s", "LFl 10s", "Q", "VQ", "Mo(U) 15s", "swell 4s"})
    void noRhythmIsHarsh(String text) {
        Rhythm rhythm = Rhythm.parse(text);
        float before = rhythm.level(0);
        float most = 0;
        for (int frame = 1; frame < 60 * 60; frame++) {
            float now = rhythm.level(frame / 60.0);
            assertAtLeast(0, now);
            assertAtMost(1, now);
            assertEquals(before, now, 1 / 6.0 + 1e-5, "frame " + frame);
            most = Math.max(most, now);
            before = now;
        }
        assertEquals(1, most, 0.001);
    }
}
