package dev.lampwright.look;

/**
 * How a glowing bar burns.
 *
 * @param brightestK temperature that is shown at full light, in K; 1000 to 10000
 * @param sparkK the most that a spark heats one pixel, in K
 * @param sparksPerPixelSecond how many sparks fall on each pixel in a second, up to 60
 * @param diffusion how quickly heat spreads, in pixels² a second, 0 to 30
 * @param coolingSeconds time in which heat falls to 1/e, in s
 * @param seed what decides where and when sparks fall
 */
public record EmberSettings(
        double brightestK,
        double sparkK,
        double sparksPerPixelSecond,
        double diffusion,
        double coolingSeconds,
        long seed) {
    /** A quiet fire. */
    public static final EmberSettings USUAL = new EmberSettings(1500, 2400, 0.9, 3, 0.9, 1);
}
