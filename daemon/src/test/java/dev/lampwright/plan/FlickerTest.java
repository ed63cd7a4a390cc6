package dev.lampwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** IEEE 1789-2015, from memory of its summary; tables on the web repeat the 8 % at 100 Hz and the limits of 1250 and 3000 Hz. */
class FlickerTest {
    @ParameterizedTest
    @CsvSource({"60, 1.5", "100, 8", "120, 9.6", "400, 32", "1000, 80", "1250, 100", "2000, 100"})
    void lowRisk(double hz, double percent) {
        assertEquals(percent, Flicker.lowRiskPercent(hz), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"60, 0.6", "300, 10", "1500, 50", "3001, 100"})
    void noEffect(double hz, double percent) {
        assertEquals(percent, Flicker.noEffectPercent(hz), 1e-9);
    }

    @Test
    void plainPwm() {
        assertEquals(Flicker.BEYOND, Flicker.ofPwm(400));
        assertEquals(Flicker.BEYOND, Flicker.ofPwm(1249));
        assertEquals(Flicker.LOW_RISK, Flicker.ofPwm(1250));
        assertEquals(Flicker.LOW_RISK, Flicker.ofPwm(2999));
        assertEquals(Flicker.NO_EFFECT, Flicker.ofPwm(3906.25));
    }
}
