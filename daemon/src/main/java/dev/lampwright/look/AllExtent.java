package dev.lampwright.look;

import java.util.Arrays;

/** Every pixel. */
public record AllExtent() implements ExtentSpec {
    @Override
    public Extent make() {
        return (moment, cover, pixels) -> Arrays.fill(cover, 0, pixels, 1);
    }
}
