package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** IEEE 1789-2015, from memory of its summary; tables on the web repeat the 8 % at 100 Hz and the limits of 1250 and 3000 Hz. */
class PwmFlickerTest {
    @ParameterizedTest
    @CsvSource({"60, 1.5", "100, 8", "120, 9.6", "400, 32", "1000, 80", "1250, 100", "2000, 100"})
    void lowRisk(double hz, double percent) {
        assertEquals(percent, PwmFlicker.lowRiskPercent(hz), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"60, 0.6", "300, 10", "1500, 50", "3001, 100"})
    void noEffect(double hz, double percent) {
        assertEquals(percent, PwmFlicker.noEffectPercent(hz), 1e-9);
    }

    @Test
    void plainPwm() {
        assertEquals(PwmFlicker.BEYOND, PwmFlicker.ofPwm(400));
        assertEquals(PwmFlicker.BEYOND, PwmFlicker.ofPwm(1249));
        assertEquals(PwmFlicker.LOW_RISK, PwmFlicker.ofPwm(1250));
        assertEquals(PwmFlicker.LOW_RISK, PwmFlicker.ofPwm(2999));
        assertEquals(PwmFlicker.NO_EFFECT, PwmFlicker.ofPwm(3906.25));
    }
}
