package dev.lampwright.tool.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PaletteTest {
    private static BufferedImage of(int... tones) {
        BufferedImage image = new BufferedImage(tones.length, 1, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < tones.length; x++) {
            image.setRGB(x, 0, tones[x]);
        }
        return image;
    }

    @Test
    void asManyColoursAsFitStay() {
        int[] tones = new Random(1).ints(256, 0, 0x1000000).toArray();
        BufferedImage image = of(tones);
        assertEquals(0, GifFile.difference(image, Palette.indexed(image)).length);
    }

    @Test
    void tooManyAreRoundedByAsLittleAsNeedBe() {
        int[] greys = new int[600];
        for (int i = 0; i < greys.length; i++) {
            greys[i] = i % 256 * 0x010000 + i / 256;
        }
        BufferedImage indexed = Palette.indexed(of(greys));
        for (int x = 0; x < greys.length; x++) {
            int off = Math.abs((indexed.getRGB(x, 0) >> 16 & 0xFF) - (greys[x] >> 16 & 0xFF));
            assertTrue(off <= 2, "off by " + off);
        }
    }

    @Test
    void blackAndWhiteStayWhateverElseIsThere() {
        int[] tones = new Random(2).ints(40_000, 0, 0x1000000).toArray();
        tones[0] = 0x000000;
        tones[1] = 0xFFFFFF;
        BufferedImage indexed = Palette.indexed(of(tones));
        assertEquals(0xFF000000, indexed.getRGB(0, 0));
        assertEquals(0xFFFFFFFF, indexed.getRGB(1, 0));
    }
}
