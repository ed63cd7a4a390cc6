package dev.lampwright.look;

/**
 * A moving stretch with a fading tail. Seen from its front, the light rises over the softness, stays over the width, and falls as
 * the square of what is left over the tail. Each pixel gets the average over its own length, so movement is smooth.
 *
 * @param width in pixels
 * @param tail in pixels
 * @param repeat in pixels; 0 for the length of the zone
 * @param motion how it moves
 * @param softness in pixels
 */
record Band(double width, double tail, double repeat, Motion motion, double softness) implements Extent {
    @Override
    public void cover(Moment moment, float[] cover, int pixels) {
        double period = repeat > 0 ? repeat : pixels;
        double head = motion.travelled(moment.seconds(), pixels);
        boolean forwards = motion.speed() >= 0;
        for (int i = 0; i < pixels; i++) {
            double behind = forwards ? head - i - 1 : i - head;
            cover[i] = Edge.cover(light(behind + 1, period) - light(behind, period));
        }
    }

    /** The integral of the light from the front of some stretch to a place behind it, over as many stretches as lie between. */
    private double light(double behind, double period) {
        double periods = Math.floor(behind / period);
        return periods * part(period) + part(behind - periods * period);
    }

    /** The same within one period, which begins at the front. */
    private double part(double behind) {
        double front = Math.min(behind, softness);
        double body = Math.min(Math.max(0, behind - softness), width);
        double left = tail > 0 ? 1 - Math.min(1, Math.max(0, behind - softness - width) / tail) : 1;
        return (softness > 0 ? front * front / (2 * softness) : 0) + body + tail * (1 - left * left * left) / 3;
    }
}
