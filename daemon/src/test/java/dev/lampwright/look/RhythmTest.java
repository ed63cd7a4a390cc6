package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against IHO INT 1, section P10: quick is 50 to 79 flashes a minute, very quick 80 to 159, a long flash lasts 2 s or more; and IALA
 * Recommendation R0110, from memory.
 */
class RhythmTest {
    private static final double STEP_S = 0.001;

    /** P10.1, 10.2, 10.3: fixed; occulting is longer light than dark; isophase is equal. */
    @Test
    void fixedOccultingAndIsophase() {
        assertEquals(1, litShare(Rhythm.parse("F")), 0.002);
        assertEquals(0.5, litShare(Rhythm.parse("Iso 2s")), 0.002);
        assertTrue(litShare(Rhythm.parse("Oc 4s")) > 0.5);
        assertEquals(4, Rhythm.parse("Oc 4s").period());
    }

    /** P10.4, 10.5: a flash is shorter than the dark and than 2 s; a long flash is 2 s or more. */
    @Test
    void flashes() {
        assertTrue(litShare(Rhythm.parse("Fl 3s")) < 0.5);
        assertTrue(litShare(Rhythm.parse("Fl 3s")) * 3 < 2);
        assertTrue(litShare(Rhythm.parse("LFl 10s")) * 10 >= 2 - 2 * STEP_S);
        assertEquals(2, flashes(Rhythm.parse("Fl(2) 6s"), 6));
        assertEquals(3, flashes(Rhythm.parse("Fl(3) 9s"), 9));
    }

    /** P10.6, 10.7: quick is 50 to 79 a minute, very quick 80 to 159. */
    @ParameterizedTest
    @CsvSource({"Q, 50, 79", "VQ, 80, 159"})
    void rates(String rhythm, int least, int most) {
        int aMinute = flashes(Rhythm.parse(rhythm), 60);
        assertTrue(aMinute >= least && aMinute <= most, rhythm + ": " + aMinute);
    }

    /** WCAG 2.x, 2.3.1: no more than three flashes in any one second; the quickest light here stays well under it. */
    @Test
    void theQuickestIsUnderThreeASecond() {
        assertTrue(flashes(Rhythm.parse("VQ"), 60) <= 3 * 60);
    }

    /** For as long as a rhythm says that it is still, its level is the same to the last bit. */
    @ParameterizedTest
    @ValueSource(strings = {"F", "Iso 2s", "Oc 4s", "Fl(2) 8s", "Q", "VQ", "Mo(U) 15s", "on 0.2s off 3s", "swell 4s"})
    void isStillForAsLongAsItSays(String text) {
        Rhythm rhythm = Rhythm.parse(text).withPhase(0.3);
        double still = 0;
        for (double seconds = 0; seconds < 40; seconds += 0.037) {
            double stillFor = Math.min(40, rhythm.stillFor(seconds) * 1e-9);
            for (int part = 0; part <= 4; part++) {
                float later = rhythm.level(seconds + stillFor * part / 4);
                assertEquals(rhythm.level(seconds), later, seconds + " s, and " + part + "/4 of " + stillFor);
            }
            still += stillFor > 0 ? 1 : 0;
        }
        assertEquals(rhythm.flashes() || text.equals("F"), still > 0, text);
    }

    /** P10.9 with ITU-R M.1677-1: U is dot, dot, dash; a dash is three dots long. */
    @Test
    void morse() {
        Rhythm u = Rhythm.parse("Mo(U) 15s");
        assertEquals(3, flashes(u, 15));
        assertEquals(5 * 0.5, litShare(u) * 15, 0.01);
    }

    @Test
    void swellRisesAndFallsSmoothly() {
        Rhythm swell = Rhythm.parse("swell 4s");
        assertEquals(0, swell.level(0), 1e-6);
        assertEquals(0.5, swell.level(1), 1e-6);
        assertEquals(1, swell.level(2), 1e-6);
        for (double t = 0; t < 8; t += STEP_S) {
            assertEquals(swell.level(t), swell.level(t + STEP_S), Math.PI / 4 * STEP_S + 1e-6);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "Blink",
                "Fl",
                "Fl 0s",
                "Fl 0.5s",
                "Fl(0) 6s",
                "Fl(9) 6s",
                "Iso(2) 4s",
                "Mo 5s",
                "Mo(UV) 15s",
                "Mo(1) 15s",
                "Iso",
                "LFl 2s"
            })
    void whatIsNoRhythmIsToldWithWhatWouldBe(String text) {
        IllegalArgumentException e = assertThrows(IllegalArgumentException.class, () -> Rhythm.parse(text));
        assertTrue(e.getMessage().contains("\"" + text + "\""), e.getMessage());
        assertTrue(e.getMessage().length() > text.length() + 25, e.getMessage());
    }

    private static double litShare(Rhythm rhythm) {
        int lit = 0;
        int steps = (int) Math.round(rhythm.period() / STEP_S);
        for (int i = 0; i < steps; i++) {
            lit += rhythm.level(i * STEP_S) > 0.5 ? 1 : 0;
        }
        return (double) lit / steps;
    }

    /** Counts from dark to light, starting in the dark at the end of a period. */
    private static int flashes(Rhythm rhythm, double seconds) {
        int count = 0;
        boolean lit = false;
        for (double t = 0; t < seconds - STEP_S / 2; t += STEP_S) {
            boolean now = rhythm.level(t) > 0.5;
            count += now && !lit ? 1 : 0;
            lit = now;
        }
        return count;
    }

    @Test
    void rhythmsThatLightAlikeAreEqual() {
        assertEquals(Rhythm.parse("Q"), Rhythm.parse("Q 1s"));
        assertEquals(Rhythm.parse("Q").hashCode(), Rhythm.parse("Q 1s").hashCode());
        assertEquals(Rhythm.parse("Iso 4s"), Rhythm.parse("Iso 4.0 s"));
        assertNotEquals(Rhythm.parse("Iso 4s"), Rhythm.parse("Iso 5s"));
        assertNotEquals(Rhythm.parse("Iso 4s"), Rhythm.parse("Oc 4s"));
        assertNotEquals(Rhythm.parse("Fl 6s"), Rhythm.parse("Fl(2) 6s"));
        assertNotEquals(Rhythm.FIXED, Rhythm.parse("swell 1s"));
    }

    @Test
    void aPeriodIsTheTimeOfOneCycle() {
        assertEquals(6, Rhythm.parse("Fl(2) 6s").period());
        assertEquals(4, Rhythm.parse("swell 4s").period());
        assertEquals(1, Rhythm.parse("Q").period());
        assertEquals(0.6, Rhythm.parse("VQ").period());
    }
}
