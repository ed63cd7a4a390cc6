package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Describes one layer of a look: paint × extent × rhythm on a zone, drawn over what is below. Immutable.
 *
 * @param zone the pixels it lies on
 * @param paint what colour
 * @param extent which pixels
 * @param rhythm when
 * @param opacity how strongly
 * @param blend how it is combined with what is below
 */
public record LayerSpec(Zone zone, PaintSpec paint, ExtentSpec extent, Rhythm rhythm, Level opacity, Blend blend) {
    /** The signals that it follows, with their bounds. */
    List<Follow> follows() {
        return Stream.of(paint.follows(), extent.follows(), opacity.follows())
                .flatMap(Optional::stream)
                .toList();
    }

    /**
     * Creates the layer.
     *
     * @return a new one
     */
    public Layer make() {
        return new Layer(zone, paint.make(), extent.make(), rhythm, opacity, blend);
    }
}
