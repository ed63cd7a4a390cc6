package dev.lampwright.tool.plan;

/**
 * What IEEE 1789-2015 says about light that is modulated at some frequency. PWM below full duty modulates all of it, 100 %. The limits are
 * from memory of the standard's summary figure.
 */
enum PwmFlicker {
    /** No observed effect. */
    NO_EFFECT,
    /** Low risk. */
    LOW_RISK,
    /** Beyond the recommended practice. */
    BEYOND;

    private static final double SLOW_HZ = 90;
    private static final double FAST_HZ = 3000;
    private static final double SLOW_LOW_RISK = 0.025;
    private static final double LOW_RISK_PER_HZ = 0.08;

    private static final double SLOW_NONE = 0.01;
    private static final double ALL_PERCENT = 100;
    private static final double NONE_PER_HZ = ALL_PERCENT / FAST_HZ;

    /** Lowest frequency at which light may be switched fully on and off with low risk: 100 % ÷ 0.08 % per Hz. */
    static final double LEAST_LOW_RISK_HZ = ALL_PERCENT / LOW_RISK_PER_HZ;

    /**
     * The highest modulation with low risk.
     *
     * @param hz frequency, in Hz
     * @return %, at most 100
     */
    static double lowRiskPercent(double hz) {
        return Math.min(ALL_PERCENT, hz * (hz < SLOW_HZ ? SLOW_LOW_RISK : LOW_RISK_PER_HZ));
    }

    /**
     * The highest modulation without an observed effect.
     *
     * @param hz frequency, in Hz
     * @return %, at most 100
     */
    static double noEffectPercent(double hz) {
        return hz > FAST_HZ ? ALL_PERCENT : hz * (hz < SLOW_HZ ? SLOW_NONE : NONE_PER_HZ);
    }

    /**
     * What the standard says about plain PWM.
     *
     * @param hz its frequency, in Hz
     * @return the statement for light that switches fully on and off at that frequency
     */
    static PwmFlicker ofPwm(double hz) {
        if (noEffectPercent(hz) >= ALL_PERCENT) {
            return NO_EFFECT;
        }
        return lowRiskPercent(hz) >= ALL_PERCENT ? LOW_RISK : BEYOND;
    }
}
