package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import java.util.Arrays;
import java.util.Optional;

/**
 * A bargraph: from the beginning of the zone, as long as a signal says; nothing while the signal is unknown.
 *
 * @param by the signal and its bounds
 * @param softness width of its end, in pixels, 0 or more; near both ends of the zone it is less, so that nothing is cut off
 */
public record BarExtent(Follow by, double softness) implements ExtentSpec, Extent {
    @Override
    public Optional<Follow> follows() {
        return Optional.of(by);
    }

    @Override
    public Extent make() {
        return this;
    }

    @Override
    public long stillFor(Moment moment) {
        return moment.stillFor(by.signal());
    }

    @Override
    public void cover(Moment moment, Cover cover) {
        int pixels = cover.pixels();
        double end = moment.share(by) * pixels;
        double soft = Math.min(softness, 2 * Math.min(end, pixels - end));
        int from = Edge.from(end, soft, pixels);
        int to = Edge.to(end, soft, pixels);
        float[] covered = cover.reach(0, to);
        Arrays.fill(covered, 0, from, 1);
        for (int i = from; i < to; i++) {
            covered[i] = Edge.cover(1 - Edge.share(i, end, soft));
        }
    }
}
