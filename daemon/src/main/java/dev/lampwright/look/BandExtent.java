package dev.lampwright.look;

/**
 * A moving stretch with a fading tail, once in the zone or repeated. Seen from its front, the light rises over the softness, stays over the
 * width, and falls over the tail as the square of the rest. Each pixel gets the average over its own length, so movement is smooth.
 *
 * <p>A stretch that turns at the ends of the zone is soft on both sides, travels from end to end with its whole width, and leaves its tail
 * behind: what it left on the way there is still fading while it comes back.
 *
 * @param width width of the stretch, in pixels
 * @param tail length of its tail, in pixels, 0 or more; it trails behind the stretch
 * @param repeat distance from one stretch to the next, in pixels; 0 for the length of the zone
 * @param motion how it moves
 * @param softness width of its front, in pixels, 0 or more
 */
public record BandExtent(double width, double tail, double repeat, Motion motion, double softness)
        implements ExtentSpec, Extent {
    @Override
    public Extent make() {
        return this;
    }

    @Override
    public long stillFor(Moment moment) {
        return motion.stillFor();
    }

    @Override
    public void cover(Moment moment, Cover cover) {
        if (motion.backAndForth()) {
            coverTurning(moment, cover);
        } else {
            coverRound(moment, cover);
        }
    }

    /**
     * One stretch after the other, each from the end of its tail to its front. If they move backwards, the zone is seen from its other end.
     */
    private void coverRound(Moment moment, Cover cover) {
        int pixels = cover.pixels();
        double period = repeat > 0 ? repeat : pixels;
        double length = Math.min(period, softness + width + tail);
        boolean back = motion.speed() < 0;
        double head = motion.travelled(moment.seconds(), pixels);
        double front = back ? pixels - head : head;
        double beyond = front - period * Math.floor((front - pixels) / period);
        double highest = beyond - length < pixels ? beyond : beyond - period;
        if (highest <= 0) {
            return;
        }
        double lowest = highest - period * (Math.ceil(highest / period) - 1);
        int first = first(lowest, length);
        int end = end(highest, pixels);
        float[] covered = back ? cover.reach(pixels - end, pixels - first) : cover.reach(first, end);
        for (double next = highest; next > 0; next -= period) {
            cover(next, length, covered, pixels, back);
        }
    }

    private void cover(double front, double length, float[] covered, int pixels, boolean back) {
        int end = end(front, pixels);
        int first = first(front, length);
        double here = light(Math.min(length, front - first));
        for (int i = first; i < end; i++) {
            double next = light(Math.max(0, front - i - 1));
            int place = back ? pixels - 1 - i : i;
            covered[place] = Edge.cover(covered[place] + here - next);
            here = next;
        }
    }

    private static int first(double front, double length) {
        return (int) Math.max(0, Math.floor(front - length));
    }

    private static int end(double front, int pixels) {
        return (int) Math.min(pixels, Math.ceil(front));
    }

    /** The integral of the light from the front of a stretch to a place behind it. */
    private double light(double behind) {
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

    /** Measured along the current direction: on the way back the zone is seen from its other end. */
    private void coverTurning(Moment moment, Cover cover) {
        int pixels = cover.pixels();
        float[] covered = cover.reach(0, pixels);
        double way = Math.max(0, pixels - (width + 2 * softness));
        double turn = motion.turn(moment.seconds(), way);
        boolean back = turn > way;
        double begin = back ? turn - way : turn;
        boolean fromFarEnd = back != motion.speed() < 0;
        double here = lightWhileTurning(0, begin, pixels);
        for (int i = 0; i < pixels; i++) {
            double next = lightWhileTurning(i + 1, begin, pixels);
            covered[fromFarEnd ? pixels - 1 - i : i] = Edge.cover(next - here);
            here = next;
        }
    }

    /**
     * The integral of the light up to a place, except for a constant, for a stretch that begins at another: the stretch itself, the tail
     * behind it, and, before it, what is left of the tail from the way there. Only what was under its full light has a tail.
     */
    private double lightWhileTurning(double place, double begin, int pixels) {
        double lastLit = begin + softness;
        double behind = lastLit - Math.max(softness, Math.min(lastLit, place));
        double front = lastLit + width;
        double ahead = Math.max(front, Math.min(pixels - softness, place)) + begin - width - softness;
        return body(place - begin) - faded(behind) + faded(ahead);
    }

    /** The integral of a stretch that is soft on both sides. */
    private double body(double place) {
        double whole = width + 2 * softness;
        double at = Math.max(0, Math.min(whole, place));
        if (at < softness) {
            return at * at / (2 * softness);
        }
        double left = whole - at;
        return left >= softness ? at - softness / 2 : width + softness - left * left / (2 * softness);
    }

    /** The integral of the tail, from where it begins to fade. */
    private double faded(double behind) {
        if (tail == 0) {
            return 0;
        }
        double left = 1 - Math.min(1, behind / tail);
        return tail * (1 - left * left * left) / 3;
    }
}
