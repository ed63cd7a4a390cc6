package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import java.util.Optional;

/**
 * A mark at the position of a signal, moved just enough not to be cut off at an end; nothing while the signal is unknown.
 *
 * @param by the signal and its bounds
 * @param width width of the mark, in pixels
 * @param softness width of each of its edges, in pixels, 0 or more
 */
public record PointerExtent(Follow by, double width, double softness) implements ExtentSpec, Extent {
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
        double margin = Math.min(width + softness, pixels) / 2;
        double middle = Math.max(margin, Math.min(pixels - margin, moment.share(by) * pixels));
        double begin = middle - width / 2;
        double end = middle + width / 2;
        int from = Edge.from(begin, softness, pixels);
        int to = Edge.to(end, softness, pixels);
        float[] covered = cover.reach(from, to);
        for (int i = from; i < to; i++) {
            covered[i] = Edge.cover(Edge.share(i, begin, softness) - Edge.share(i, end, softness));
        }
    }
}
