package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.color.ColorSpace;
import org.junit.jupiter.api.Test;

class SrgbTest {
    /** IEC 61966-2-1: the straight part and its end, the ends, and the values of 8-bit codes by its equations (worked out by hand). */
    @Test
    void standardValues() {
        assertEquals(0, Srgb.decode(0));
        assertEquals(1, Srgb.decode(1), 1e-15);
        assertEquals(0.0031308, Srgb.decode(0.04045), 1e-7);
        assertEquals(0.00030352698, Srgb.decode(1 / 255.0), 1e-10);
        assertEquals(0.21404114, Srgb.decode(0.5), 1e-8);
        assertEquals(0.73535698, Srgb.encode(0.5), 1e-8);
    }

    @Test
    void encodingUndoesDecoding() {
        for (int code = -255; code <= 510; code++) {
            double encoded = code / 255.0;
            assertEquals(encoded, Srgb.encode(Srgb.decode(encoded)), 1e-7, "code " + code);
        }
    }

    /** The JDK's colour management works with 16 bits and a table; it is never nearer than about 1e-4. */
    @Test
    void jdkAgrees() {
        ColorSpace linear = ColorSpace.getInstance(ColorSpace.CS_LINEAR_RGB);
        for (int code = 0; code <= 255; code++) {
            float encoded = code / 255f;
            float[] light = linear.fromRGB(new float[] {encoded, encoded, encoded});
            assertEquals(light[1], Srgb.decode(encoded), 1.5e-4, "code " + code);
        }
    }

    /** The JDK's CIE XYZ is that of ICC profiles, relative to D50. Its sRGB profile is rounded to about four digits. */
    @Test
    void jdkAgreesOnXyz() {
        ColorSpace xyz = ColorSpace.getInstance(ColorSpace.CS_CIEXYZ);
        for (int code = 0; code < 512; code++) {
            float[] encoded = {(code >> 6) / 7f, (code >> 3 & 7) / 7f, (code & 7) / 7f};
            float[] theirs = xyz.fromRGB(encoded);
            Rgb ours = Conversions.rgb(Space.XYZ_D50, new Triple(theirs[0], theirs[1], theirs[2]));
            assertEquals(Srgb.decode(encoded[0]), ours.red(), 1e-3, "red of " + code);
            assertEquals(Srgb.decode(encoded[1]), ours.green(), 1e-3, "green of " + code);
            assertEquals(Srgb.decode(encoded[2]), ours.blue(), 1e-3, "blue of " + code);
        }
    }

    /** IEC 61966-2-1, equation for Y: 0.2126 R + 0.7152 G + 0.0722 B. */
    @Test
    void luminance() {
        assertEquals(0.2126, new Light(1, 0, 0).luminance(), 5e-5);
        assertEquals(0.7152, new Light(0, 1, 0).luminance(), 5e-5);
        assertEquals(0.0722, new Light(0, 0, 1).luminance(), 5e-5);
        assertEquals(1, Light.WHITE.luminance(), 1e-12);
    }
}
