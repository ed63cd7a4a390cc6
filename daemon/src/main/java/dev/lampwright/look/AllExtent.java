package dev.lampwright.look;

/** Every pixel. */
public record AllExtent() implements ExtentSpec {
    @Override
    public Extent make() {
        return (moment, cover) -> cover.all();
    }
}
