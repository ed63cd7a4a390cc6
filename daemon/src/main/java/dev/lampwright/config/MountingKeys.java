package dev.lampwright.config;

import dev.lampwright.config.Mounting.Corner;
import dev.lampwright.config.Mounting.SeenAs;
import dev.lampwright.config.Mounting.Shape;
import java.util.List;
import java.util.Map;

/** The keys of {@code [strip]} that say how it is mounted and what is seen of it. */
final class MountingKeys {
    private static final Map<String, Corner> CORNERS =
            Words.of(Corner.values(), corner -> Words.lowerCase(corner).replace('_', ' '));
    private static final Map<String, Shape> SHAPES = Words.of(Shape.values(), Words::lowerCase);
    private static final int MOST_SIDES = 4;
    private static final int MOST_PIXELS = 65_535;
    private static final String WANTED_SIDES =
            "give the pixels of each side, four at most, in the order of the strip, for instance [20, 10, 20, 10]";

    /** The key {@code shape}. */
    static final Key<Shape> SHAPE = Key.word("shape", SHAPES)
            .otherwise(Shape.STRAIGHT, "straight")
            .comment("\"frame\"", "how the live page draws it; pixel 0 of a ring is at the bottom");
    /** The key {@code begins}. */
    static final Key<Corner> BEGINS = Key.word("begins", CORNERS)
            .otherwise(Corner.BOTTOM_LEFT, "bottom left")
            .with("shape = \"frame\"")
            .comment("\"bottom left\"", "the corner where pixel 0 is");
    /** The key {@code clockwise}. */
    static final Key<Boolean> CLOCKWISE = Key.flag("clockwise")
            .otherwise(true, "true")
            .with("a frame or a ring")
            .comment("true", "which way it runs, as seen from in front of the printer");
    /** The key {@code seen_as}. */
    static final Key<SeenAs> SEEN_AS = Key.word("seen_as", SeenAs.class)
            .otherwise(SeenAs.DOTS, "dots")
            .comment("\"line\"", "behind a diffuser: the live page draws no single pixels");

    private MountingKeys() {}

    /**
     * Reads the keys.
     *
     * @param strip the section
     * @param pixels pixels of the strip
     * @param dimmers what is connected to the controller's PWM outputs
     * @return their content; a straight strip replaces what is wrong
     */
    static Mounting read(Table strip, int pixels, DimmersSection dimmers) {
        Shape shape = strip.get(SHAPE);
        List<Integer> sides = shape == Shape.FRAME ? sides(strip, pixels) : List.of();
        Corner begins = shape == Shape.FRAME ? strip.get(BEGINS) : Corner.BOTTOM_LEFT;
        boolean clockwise = shape == Shape.STRAIGHT || strip.get(CLOCKWISE);
        SeenAs seenAs = strip.get(SEEN_AS);
        strip.noteUseless();
        Shape drawn = sides.isEmpty() && shape == Shape.FRAME ? Shape.STRAIGHT : shape;
        return new Mounting(drawn, sides, begins, clockwise, seenAs, dimmers.sides());
    }

    private static List<Integer> sides(Table strip, int pixels) {
        if (!strip.has("sides_px")) {
            strip.mistake("sides_px", "is missing, which a frame needs", WANTED_SIDES);
            return List.of();
        }
        List<Double> sides = strip.numbers("sides_px", 1, MOST_PIXELS);
        double sum = sides.stream().mapToDouble(Double::doubleValue).sum();
        boolean whole = sides.stream().allMatch(side -> side == Math.rint(side));
        if (strip.right() && (!whole || sides.size() > MOST_SIDES || sum != pixels)) {
            String are = sides.size() + " sides with " + Wording.number(sum) + " pixels together";
            strip.mistake("sides_px", "has " + are + ", and the strip has " + pixels, WANTED_SIDES);
        }
        return sides.stream().map(Double::intValue).toList();
    }
}
