package dev.lampwright.colour;

import java.util.Map;

/**
 * Reads a CSS colour by recursive descent. Source of the grammar: CSS Color Module Level 4, "Representing Colors" and the sections of the
 * functions; everything except system colours, {@code currentcolor}, {@code calc()} and the wider print spaces of {@code color()}.
 */
final class CssParser {
    private static final String COLOR_EXAMPLE = "color(srgb 1 0.5 0)";
    private static final Map<String, Double> DEGREES_PER =
            Map.of("", 1.0, "deg", 1.0, "grad", 0.9, "rad", 180 / Math.PI, "turn", 360.0);

    /** Far outside of every colour, and small enough that no later step overflows. */
    private static final double TOO_LARGE = 1e6;

    private final String original;
    private final CssText text;
    private String example = "orange\", \"#ff8000\" or \"oklch(70% 0.15 50)";

    /**
     * Creates a parser.
     *
     * @param original what the user wrote
     */
    CssParser(String original) {
        this.original = original;
        text = new CssText(original);
    }

    /**
     * Reads all of it.
     *
     * @return the colour
     * @throws IllegalArgumentException if it is not valid
     */
    Colour colour() {
        text.skipSpaces();
        Colour colour = text.take('#') ? hex() : named();
        text.skipSpaces();
        if (!text.atEnd()) {
            throw wrong("\"" + text.rest() + "\" is too much");
        }
        return colour;
    }

    private Colour hex() {
        example = "#ff8000";
        return HexColour.of(text.word())
                .orElseThrow(() -> wrong("after # come 3, 4, 6 or 8 of the digits 0-9 and a-f"));
    }

    private Colour named() {
        String word = text.word();
        if (text.take('(')) {
            return function(word);
        }
        if (word.equals("transparent")) {
            return new Colour(Space.SRGB, new Triple(0, 0, 0), 0);
        }
        return NamedColours.find(word).orElseThrow(() -> wrong(word.isEmpty() ? "nothing there" : "no such name"));
    }

    private Colour function(String name) {
        if (name.equals("color")) {
            return colorFunction();
        }
        Notation notation = Notation.function(name)
                .orElseThrow(() -> wrong(
                        "no function \"" + name + "\"; there are rgb, hsl, hwb, lab, lch, oklab, oklch and color"));
        return arguments(notation);
    }

    private Colour colorFunction() {
        example = COLOR_EXAMPLE;
        text.skipSpaces();
        String name = text.word();
        return arguments(Notation.color(name)
                .orElseThrow(() -> wrong("color() knows srgb, srgb-linear, display-p3, xyz, xyz-d50 and xyz-d65, not \""
                        + name + "\"")));
    }

    private Colour arguments(Notation notation) {
        example = notation.example();
        Value first = value(notation.channels().get(0), "first");
        boolean commas = text.take(',');
        if (commas && !notation.hasCommas()) {
            throw wrong("commas go with rgb and hsl only; use spaces");
        }
        Value second = value(notation.channels().get(1), "second");
        if (commas && !text.take(',')) {
            throw wrong("either commas between all values or none");
        }
        Value third = value(notation.channels().get(2), "third");
        if (commas) {
            requireOlderWriting(notation.space(), first, second, third);
        }
        double alpha =
                text.take(commas ? ',' : '/') ? value(Channel.ALPHA, "alpha").number() : 1;
        close();
        return new Colour(notation.space(), new Triple(first.number(), second.number(), third.number()), alpha);
    }

    private void close() {
        if (!text.take(')')) {
            throw wrong(text.atEnd() ? "\")\" is missing at the end" : "\"" + text.rest() + "\" instead of \")\"");
        }
    }

    /** The notation with commas allows neither none nor a mixture of units; saturation and lightness of hsl are percentages. */
    private void requireOlderWriting(Space space, Value first, Value second, Value third) {
        boolean alike = space == Space.HSL
                ? second.kind() == Kind.PERCENTAGE && third.kind() == Kind.PERCENTAGE
                : first.kind() == second.kind() && second.kind() == third.kind();
        if (!alike || first.kind() == Kind.NONE) {
            throw wrong(
                    space == Space.HSL
                            ? "with commas, the second and third are percentages"
                            : "with commas, all three are numbers or all three are percentages");
        }
    }

    private Value value(Channel channel, String which) {
        text.skipSpaces();
        Value value = text.startsNumber() ? quantity(channel, which) : none(which);
        text.skipSpaces();
        return value;
    }

    private Value none(String which) {
        String found = text.rest();
        if (!text.word().equals("none")) {
            throw wrong("the " + which + " value is missing or no number, at \"" + found + "\"");
        }
        return new Value(Kind.NONE, Double.NaN);
    }

    private Value quantity(Channel channel, String which) {
        double number = text.number();
        String unit = text.unit();
        if (Math.abs(number) > TOO_LARGE) {
            throw wrong("the " + which + " value is far outside of every colour");
        }
        if (channel.isHue()) {
            Double degrees = DEGREES_PER.get(unit);
            if (degrees == null) {
                throw wrong("a hue is in degrees, or in deg, grad, rad or turn, not in \"" + unit + "\"");
            }
            return new Value(Kind.NUMBER, number * degrees);
        }
        return switch (unit) {
            case "" -> new Value(Kind.NUMBER, channel.number(number));
            case "%" -> new Value(Kind.PERCENTAGE, channel.percentage(number));
            default -> throw wrong("the " + which + " value is a number or a percentage, without \"" + unit + "\"");
        };
    }

    private IllegalArgumentException wrong(String what) {
        return new IllegalArgumentException(
                "\"" + original + "\" is not a CSS colour: " + what + "; write it like \"" + example + "\"");
    }

    private enum Kind {
        NUMBER,
        PERCENTAGE,
        NONE
    }

    private record Value(Kind kind, double number) {}
}
