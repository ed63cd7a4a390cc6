package dev.lampwright.look;

/**
 * A moving stretch with a fading tail, once in the zone or over and over. Seen from its front, the light rises over the softness,
 * stays over the width, and falls as the square of what is left over the tail. Each pixel gets the average over its own length, so
 * movement is smooth.
 *
 * @param width width of the stretch, in pixels
 * @param tail length of its tail, in pixels, 0 or more; it lies where the stretch comes from
 * @param repeat from one stretch to the next, in pixels; 0 for the length of the zone
 * @param motion how it moves
 * @param softness width of its front, in pixels, 0 or more
 */
public record BandExtent(double width, double tail, double repeat, Motion motion, double softness)
        implements ExtentSpec {
    @Override
    public Extent make() {
        return this::cover;
    }

    private void cover(Moment moment, float[] cover, int pixels) {
        double period = repeat > 0 ? repeat : pixels;
        double head = motion.travelled(moment.seconds(), pixels);
        double whole = part(period);
        int away = motion.speed() >= 0 ? -1 : 1;
        double here = light(-away * head, period, whole);
        for (int i = 0; i < pixels; i++) {
            double next = light(away * (i + 1 - head), period, whole);
            cover[i] = Edge.cover(Math.abs(next - here));
            here = next;
        }
    }

    /** The integral of the light from the front of some stretch to a place behind it, over as many stretches as lie between. */
    private double light(double behind, double period, double whole) {
        double periods = Math.floor(behind / period);
        return periods * whole + part(Math.max(0, behind - periods * period));
    }

    /** The same within one period, which begins at the front. */
    private double part(double behind) {
        if (behind < softness) {
            return behind * behind / (2 * softness);
        }
        double body = behind - softness;
        if (body < width) {
            return softness / 2 + body;
        }
        if (body < width + tail) {
            double left = 1 - (body - width) / tail;
            return softness / 2 + width + tail * (1 - left * left * left) / 3;
        }
        return softness / 2 + width + tail / 3;
    }
}
