package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class GradientTest {
    private static final double QUARTER_LEVEL = 0.25 / 255;
    private static final double JUST_NOTICEABLE = 0.02;

    private final float[] rgb = new float[3];

    @Test
    void lightsFlowEvenlyThroughOklab() {
        Light blue = CssColour.parse("midnightblue");
        Light red = CssColour.parse("crimson");
        Light orange = CssColour.parse("orangered");
        Gradient gradient = new Gradient(List.of(blue, red, orange));
        assertAt(blue, gradient, 0);
        assertAt(red, gradient, 0.5);
        assertAt(orange, gradient, 1);
        Light between = new Mix(Colour.of(red), Colour.of(orange), Interpolation.OKLAB)
                .colour(0.5)
                .light();
        assertAt(between, gradient, 0.75);
    }

    @Test
    void outsideIsTheNearerEndAndNanTheFirst() {
        Gradient gradient = new Gradient(List.of(Light.BLACK, Light.WHITE));
        assertAt(Light.BLACK, gradient, -3);
        assertAt(Light.WHITE, gradient, 1e9);
        assertAt(Light.BLACK, gradient, Double.NaN);
    }

    @Test
    void oneColourIsEverywhere() {
        Light light = CssColour.parse("seagreen");
        for (double share = -0.5; share < 1.5; share += 0.01) {
            assertAt(light, new Gradient(List.of(light)), share);
        }
    }

    /** What looking up adds to the exact mixture stays under a quarter of what a strip can show. */
    @Test
    void theTableIsNearerThanAQuarterLevel() {
        forEveryPlace(Interpolation.OKLAB, colours("midnightblue", "gold", "tomato", "white"), (exact, found) -> {
            assertEquals(exact.red(), found.red(), QUARTER_LEVEL);
            assertEquals(exact.green(), found.green(), QUARTER_LEVEL);
            assertEquals(exact.blue(), found.blue(), QUARTER_LEVEL);
        });
    }

    /** Where colours cannot be shown the mapping itself has small leaps; across these the table is off by far less than can be seen. */
    @Test
    void theTableIsNearerThanCanBeSeen() {
        for (Interpolation way : Interpolation.values()) {
            forEveryPlace(
                    way,
                    colours("blue", "yellow", "oklch(60% 0.3 20)", "white"),
                    (exact, found) -> assertEquals(
                            0, Oklab.of(exact).difference(Oklab.of(found)), JUST_NOTICEABLE / 4, way.name()));
        }
    }

    private void forEveryPlace(Interpolation way, List<Colour> colours, BiConsumer<Light, Light> judge) {
        Gradient gradient = Gradient.flowing(Stop.evenly(colours), way);
        for (int i = 0; i < 3000; i++) {
            int from = i / 1000;
            double within = (i - 1000 * from) * 0.001;
            gradient.colour((from + within) / 3, rgb, 0);
            Mix mix = new Mix(colours.get(from), colours.get(from + 1), way);
            judge.accept(mix.colour(within).light(), new Light(rgb[0], rgb[1], rgb[2]));
        }
    }

    @Test
    void stopsHaveTheirPlaces() {
        List<Stop> stops = List.of(
                new Stop(CssColour.colour("red"), 0.25),
                new Stop(CssColour.colour("lime"), 0.5),
                new Stop(CssColour.colour("blue"), 0.5));
        Gradient gradient = Gradient.flowing(stops, Interpolation.OKLAB);
        assertAt(CssColour.parse("red"), gradient, 0.1);
        assertAt(CssColour.parse("red"), gradient, 0.25);
        assertAt(CssColour.parse("lime"), gradient, Math.nextDown(0.5));
        assertAt(CssColour.parse("blue"), gradient, 0.5);
        assertAt(CssColour.parse("blue"), gradient, 0.9);
        List<Stop> atEnd =
                List.of(stops.get(0), new Stop(CssColour.colour("lime"), 1), new Stop(CssColour.colour("blue"), 1));
        assertAt(CssColour.parse("blue"), Gradient.flowing(atEnd, Interpolation.OKLCH_LONGER), 1);
    }

    @Test
    void stepsAreExact() {
        List<Stop> stops = Stop.stretches(colours("red", "yellow", "lime"));
        Gradient gradient = Gradient.stepped(stops);
        assertAt(CssColour.parse("red"), gradient, Math.nextDown(1 / 3.0));
        assertAt(CssColour.parse("yellow"), gradient, 1 / 3.0);
        assertAt(CssColour.parse("yellow"), gradient, Math.nextDown(2 / 3.0));
        assertAt(CssColour.parse("lime"), gradient, 2 / 3.0);
        assertAt(CssColour.parse("lime"), gradient, 1);
        assertAt(CssColour.parse("red"), gradient, -1);
        assertAt(CssColour.parse("red"), gradient, Double.NaN);
    }

    @Test
    void alphaFlowsAndSteps() {
        List<Colour> colours = colours("#ff000000", "#ff0000");
        assertEquals(
                0.25f,
                Gradient.flowing(Stop.evenly(colours), Interpolation.OKLAB).alpha(0.25),
                1e-6f);
        assertEquals(0f, Gradient.stepped(Stop.stretches(colours)).alpha(0.49));
        assertEquals(1f, Gradient.stepped(Stop.stretches(colours)).alpha(0.5));
    }

    /** Many rigs show the same looks, and a table takes kilobytes. */
    @Test
    void equalOnesAreCalculatedOnce() {
        Gradient flowing = Gradient.flowing(Stop.evenly(colours("red", "lime")), Interpolation.OKLAB);
        Gradient stepped = Gradient.stepped(Stop.evenly(colours("red", "lime")));
        assertSame(flowing, Gradient.flowing(Stop.evenly(colours("red", "lime")), Interpolation.OKLAB));
        assertSame(stepped, Gradient.stepped(Stop.evenly(colours("red", "lime"))));
        assertNotEquals(flowing, stepped);
        assertNotEquals(flowing, Gradient.flowing(Stop.evenly(colours("red", "lime")), Interpolation.OKLCH_LONGER));
        assertNotEquals(flowing, Gradient.flowing(Stop.evenly(colours("red", "blue")), Interpolation.OKLAB));
    }

    @Test
    void wrongStopsAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Gradient(List.of()));
        Colour red = CssColour.colour("red");
        for (double[] places : new double[][] {{0.5, 0.4}, {-0.1, 1}, {0, 1.1}, {0, Double.NaN}}) {
            List<Stop> stops = List.of(new Stop(red, places[0]), new Stop(red, places[1]));
            String message = assertThrows(
                            IllegalArgumentException.class, () -> Gradient.flowing(stops, Interpolation.OKLAB))
                    .getMessage();
            assertTrue(message.contains("from 0 to 1 and never back"), message);
            assertThrows(IllegalArgumentException.class, () -> Gradient.stepped(stops));
        }
    }

    private void assertAt(Light wanted, Gradient gradient, double share) {
        gradient.colour(share, rgb, 0);
        assertEquals(wanted.red(), rgb[0], 1e-6, "red at " + share);
        assertEquals(wanted.green(), rgb[1], 1e-6, "green at " + share);
        assertEquals(wanted.blue(), rgb[2], 1e-6, "blue at " + share);
    }

    private static List<Colour> colours(String... texts) {
        return Stream.of(texts).map(CssColour::colour).toList();
    }
}
