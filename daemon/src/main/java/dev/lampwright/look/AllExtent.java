package dev.lampwright.look;

import dev.lampwright.signal.Signals;

/** Every pixel. */
public record AllExtent() implements ExtentSpec, Extent {
    @Override
    public Extent make() {
        return this;
    }

    @Override
    public void cover(Moment moment, Cover cover) {
        cover.all();
    }

    @Override
    public long stillFor(Moment moment) {
        return Signals.FOREVER;
    }
}
