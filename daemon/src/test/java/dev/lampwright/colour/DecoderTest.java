package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DecoderTest {
    /** IEC 61966-2-1: light of 128/255 is encoded as 1.055 × 0.50196^(1/2.4) − 0.055 = 0.7366. */
    @Test
    void bytesAreLightAndAScreenShowsThemEncoded() {
        double[] colour = new Decoder("GRB").screen(new byte[] {(byte) 128, 0, (byte) 255}, 0);
        assertEquals(0, colour[0]);
        assertEquals(0.7366, colour[1], 0.0001);
        assertEquals(1, colour[2], 1e-9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"RGB", "RBG", "GRB", "GBR", "BRG", "BGR", "RGBW", "WGRB", "GRWB"})
    void whatIsEncodedComesBack(String order) {
        float[] light = {1, 0.5f, 0.25f, 1, 0, 0, 1, 1, 0.2f, 0.2f, 0.2f, 1};
        byte[] strip = new byte[3 * order.length()];
        StripSpec.plain(2, order).make().encode(light, strip);
        Decoder decoder = new Decoder(order);
        assertEquals(3, decoder.pixels(strip));
        for (int i = 0; i < 9; i++) {
            assertEquals(light[i / 3 * 4 + i % 3], decoder.light(strip, i / 3, i % 3), 1.01 / 255, "value " + i);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"RGB", "GRB", "BGR", "RGBW", "WGRB"})
    void aRunIsTheSumOfItsPixels(String order) {
        byte[] strip = new byte[20 * order.length()];
        new Random(order.hashCode()).nextBytes(strip);
        Decoder decoder = new Decoder(order);
        int[] sums = new int[3];
        decoder.sum(strip, 3, 17, sums);
        for (int colour = 0; colour < 3; colour++) {
            double sum = 0;
            for (int pixel = 3; pixel < 17; pixel++) {
                sum += decoder.light(strip, pixel, colour);
            }
            assertEquals(255 * sum, sums[colour], 0.01);
        }
    }

    @Test
    void moreThanFullIsFull() {
        byte[] strip = {(byte) 200, 0, 0, (byte) 100};
        assertEquals(1, new Decoder("RGBW").light(strip, 0, 0));
        assertEquals(100 / 255f, new Decoder("RGBW").light(strip, 0, 1));
    }
}
