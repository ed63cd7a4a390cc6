package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.colour.Colour;
import dev.lampwright.colour.CssColour;
import dev.lampwright.colour.Light;
import java.awt.AlphaComposite;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Against W3C Compositing and Blending Level 1, and Java2D's own compositing. */
class BlendTest {
    private static final float EXACT = 1e-5f;
    private static final Zone ONE_PIXEL = Zone.run(0, 0);

    private final SplittableRandom chance = new SplittableRandom(5);

    /** The formulas of section 10.1, as they are written there. */
    private static double formula(Blend blend, double cb, double cs) {
        return switch (blend) {
            case NORMAL, PLUS_LIGHTER -> cs;
            case MULTIPLY -> cb * cs;
            case SCREEN -> cb + cs - (cb * cs);
            case OVERLAY -> formula(Blend.HARD_LIGHT, cs, cb);
            case DARKEN -> Math.min(cb, cs);
            case LIGHTEN -> Math.max(cb, cs);
            case COLOR_DODGE -> cb == 0 ? 0 : cs == 1 ? 1 : Math.min(1, cb / (1 - cs));
            case COLOR_BURN -> cb == 1 ? 1 : cs == 0 ? 0 : 1 - Math.min(1, (1 - cb) / cs);
            case HARD_LIGHT -> cs <= 0.5 ? formula(Blend.MULTIPLY, cb, 2 * cs) : formula(Blend.SCREEN, cb, 2 * cs - 1);
            case SOFT_LIGHT -> {
                double d = cb <= 0.25 ? ((16 * cb - 12) * cb + 4) * cb : Math.sqrt(cb);
                yield cs <= 0.5 ? cb - (1 - 2 * cs) * cb * (1 - cb) : cb + (2 * cs - 1) * (d - cb);
            }
            case DIFFERENCE -> Math.abs(cb - cs);
            case EXCLUSION -> cb + cs - 2 * cb * cs;
        };
    }

    @ParameterizedTest
    @EnumSource
    void mixesAsTheFormulaHasIt(Blend blend) {
        for (int i = 0; i <= 64; i++) {
            for (int j = 0; j <= 64; j++) {
                double cb = i / 64.0;
                double cs = j / 64.0;
                assertEquals(formula(blend, cb, cs), blend.mix((float) cb, 1, (float) cs), EXACT, cb + " under " + cs);
            }
        }
    }

    /** Section 5.1 with 9.1.4: co = cs αs + cb αb (1 − αs), where Cs = (1 − αb) Cs + αb B(Cb, Cs); 9.1.14 for plus-lighter. */
    @ParameterizedTest
    @EnumSource
    void coversAsTheFormulaHasIt(Blend blend) {
        for (int trial = 0; trial < 500; trial++) {
            float[] below = {chance(), chance(), chance(), share()};
            Light source = new Light(chance(), chance(), chance());
            float alpha = share();
            float[] drawn = drawn(below, source, alpha, blend);
            float[] colour = {source.red(), source.green(), source.blue()};
            for (int c = 0; c < 3; c++) {
                double cs = (1 - below[3]) * colour[c] + below[3] * formula(blend, below[c], colour[c]);
                double over = alpha * cs + below[c] * below[3] * (1 - alpha);
                double lighter = Math.min(1, colour[c] * alpha + below[c] * below[3]);
                assertEquals(blend == Blend.PLUS_LIGHTER ? lighter : over, drawn[c], EXACT);
            }
            double alphaOver = alpha + below[3] * (1 - alpha);
            assertEquals(blend == Blend.PLUS_LIGHTER ? Math.min(1, alpha + below[3]) : alphaOver, drawn[3], EXACT);
        }
    }

    /** Java2D calculates in 8 bits; two roundings are allowed. */
    @Test
    void normalIsJavas() {
        for (int trial = 0; trial < 500; trial++) {
            float[] below = {chance(), chance(), chance(), share()};
            Light source = new Light(chance(), chance(), chance());
            float alpha = share();
            float[] drawn = drawn(below, source, alpha, Blend.NORMAL);
            BufferedImage image = new BufferedImage(1, 1, BufferedImage.TYPE_INT_ARGB_PRE);
            fill(image, AlphaComposite.Src, new Color(below[0], below[1], below[2], below[3]));
            fill(image, AlphaComposite.SrcOver, new Color(source.red(), source.green(), source.blue(), alpha));
            int[] java = image.getRaster().getPixel(0, 0, new int[4]);
            for (int c = 0; c < 4; c++) {
                assertEquals(java[c] / 255.0, drawn[c], 2 / 255.0);
            }
        }
    }

    private static void fill(BufferedImage image, AlphaComposite how, Color colour) {
        Graphics2D graphics = image.createGraphics();
        graphics.setComposite(how);
        graphics.setColor(colour);
        graphics.fillRect(0, 0, 1, 1);
        graphics.dispose();
    }

    @Test
    void everyWordIsThatOfTheStandard() {
        assertEquals(
                List.of(
                        "normal",
                        "plus-lighter",
                        "multiply",
                        "screen",
                        "overlay",
                        "darken",
                        "lighten",
                        "color-dodge",
                        "color-burn",
                        "hard-light",
                        "soft-light",
                        "difference",
                        "exclusion"),
                List.of(Blend.values()).stream().map(Blend::word).toList());
    }

    /** The alpha of a colour, the opacity and a half-lit rhythm multiply to one alpha. */
    @Test
    void alphasAreMultiplied() {
        Colour halfWhite = CssColour.colour("rgb(255 255 255 / 50%)");
        Rhythm swell = Rhythm.parse("swell 4s");
        Layer layer = new Layer(
                ONE_PIXEL,
                new SolidPaint(halfWhite).make(),
                new AllExtent().make(),
                swell,
                Level.fixed(0.5),
                Blend.NORMAL);
        Canvas canvas = new Canvas(1, 0);
        layer.draw(Moments.after(1), canvas);
        assertEquals(0.125, canvas.rgba()[0], EXACT);
        assertEquals(0.125, canvas.rgba()[3], EXACT);
    }

    private static float[] drawn(float[] below, Light source, float alpha, Blend blend) {
        Canvas canvas = new Canvas(1, 0);
        for (int c = 0; c < 4; c++) {
            canvas.rgba()[c] = c < 3 ? below[c] * below[3] : below[3];
        }
        Paint paint = new SolidPaint(Colour.of(source)).make();
        new Layer(ONE_PIXEL, paint, new AllExtent().make(), Rhythm.FIXED, Level.fixed(alpha), blend)
                .draw(Moments.after(0), canvas);
        return canvas.rgba();
    }

    /** Colours on a grid of 255, so that Java2D keeps them unchanged. */
    private float chance() {
        return chance.nextInt(256) / 255f;
    }

    private float share() {
        return chance.nextInt(1, 256) / 255f;
    }
}
