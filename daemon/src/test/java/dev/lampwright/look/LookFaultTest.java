package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.colour.CssColour;
import dev.lampwright.signal.Follow;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A part of a look that fails is dark, and nothing else is. */
class LookFaultTest {
    private static final float EXACT = 1e-6f;
    private static final Zone LEFT = Zone.run(0, 0);
    private static final Zone RIGHT = Zone.run(1, 1);
    private static final Paint RED = new SolidPaint(CssColour.colour("red")).make();

    private final List<LookFault> faults = new ArrayList<>();
    private final Canvas canvas = new Canvas(2, 2);

    private void draw(Look look, int times) {
        for (int i = 0; i < times; i++) {
            look.draw(Moments.after(i), canvas, faults::add);
        }
    }

    private static Layer layer(Zone zone, Paint paint) {
        return new Layer(zone, paint, new AllExtent().make(), Rhythm.FIXED, Level.fixed(1), Blend.NORMAL);
    }

    private static Look look(Paint wrong) {
        List<Layer> layers = List.of(layer(LEFT, RED), layer(RIGHT, wrong), layer(RIGHT, wrong));
        return new Look("odd", layers, List.of(Level.fixed(0.5), Level.fixed(0.25)), false);
    }

    private void assertOnlyTheRestIsLit() {
        assertArrayEquals(new float[] {1, 0, 0, 1, 0, 0, 0, 0}, canvas.rgba(), EXACT);
        assertArrayEquals(new float[] {0.5f, 0.25f}, canvas.dimmers());
    }

    @Test
    void layersThatThrowAreDarkAndToldOnce() {
        draw(
                look((moment, cover, rgba) -> {
                    throw new IllegalStateException("burnt");
                }),
                3);
        assertOnlyTheRestIsLit();
        String why = "java.lang.IllegalStateException: burnt";
        assertEquals(List.of(new LookFault("odd", "layers.1", why), new LookFault("odd", "layers.2", why)), faults);
    }

    @ParameterizedTest
    @ValueSource(floats = {Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY, -0.5f, 1.5f})
    void layersWhoseLightIsNoneAreDarkAndToldOnce(float wrong) {
        draw(
                look((moment, cover, rgba) -> {
                    rgba[0] = 0;
                    rgba[1] = wrong;
                    rgba[2] = 0;
                    rgba[3] = 1;
                    return rgba;
                }),
                3);
        assertOnlyTheRestIsLit();
        assertEquals(
                List.of("layers.1", "layers.2"),
                faults.stream().map(LookFault::part).toList());
    }

    /** Levels are also used as a layer's opacity. */
    @Test
    void anOpacityThatIsNoNumberDarkensItsLayer() {
        Layer odd = new Layer(RIGHT, RED, new AllExtent().make(), Rhythm.FIXED, Level.fixed(Double.NaN), Blend.NORMAL);
        draw(new Look("odd", List.of(layer(LEFT, RED), odd), List.of(Level.fixed(0.5), Level.fixed(0.25)), false), 3);
        assertOnlyTheRestIsLit();
        assertEquals(List.of("layers.1"), faults.stream().map(LookFault::part).toList());
    }

    @Test
    void aLayerThatFailsLaterIsLitUntilThen() {
        Look look = look((moment, cover, rgba) -> {
            if (moment.seconds() > 1) {
                throw new IllegalStateException("burnt");
            }
            return RED.paint(moment, cover, rgba);
        });
        draw(look, 2);
        assertArrayEquals(new float[] {1, 0, 0, 1, 1, 0, 0, 1}, canvas.rgba(), EXACT);
        assertEquals(List.of(), faults);
        draw(look, 3);
        assertOnlyTheRestIsLit();
        assertEquals(2, faults.size());
    }

    @Test
    void aDimmerWhoseLevelFailsIsDarkAndToldOnce() {
        Level throwing = Level.by(new Follow(null, 0, 1));
        draw(new Look("odd", List.of(layer(LEFT, RED)), List.of(throwing, Level.fixed(0.25)), false), 3);
        assertArrayEquals(new float[] {0, 0.25f}, canvas.dimmers());
        draw(new Look("odd", List.of(layer(LEFT, RED)), List.of(Level.fixed(0.5), Level.fixed(Double.NaN)), false), 3);
        assertArrayEquals(new float[] {0.5f, 0}, canvas.dimmers());
        assertArrayEquals(new float[] {1, 0, 0, 1, 0, 0, 0, 0}, canvas.rgba(), EXACT);
        assertEquals(
                List.of("dimmers.0", "dimmers.1"),
                faults.stream().map(LookFault::part).toList());
    }
}
