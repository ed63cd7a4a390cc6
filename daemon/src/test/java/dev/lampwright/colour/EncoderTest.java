package dev.lampwright.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EncoderTest {
    private static final com.sun.management.ThreadMXBean THREADS =
            (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();

    private final SplittableRandom random = new SplittableRandom(3);

    @Test
    void everyOrder() {
        float[] rgba = {0.2f, 0.6f, 1, 1};
        for (String order : orders("RGB")) {
            byte[] strip = new byte[3];
            StripSpec.plain(2, order).make().encode(rgba, strip);
            assertEquals(51, strip[order.indexOf('R')] & 0xFF, order);
            assertEquals(153, strip[order.indexOf('G')] & 0xFF, order);
            assertEquals(255, strip[order.indexOf('B')] & 0xFF, order);
        }
        for (String order : orders("RGBW")) {
            byte[] strip = new byte[4];
            StripSpec.plain(2, order).make().encode(rgba, strip);
            assertEquals(0, strip[order.indexOf('R')] & 0xFF, order);
            assertEquals(102, strip[order.indexOf('G')] & 0xFF, order);
            assertEquals(204, strip[order.indexOf('B')] & 0xFF, order);
            assertEquals(51, strip[order.indexOf('W')] & 0xFF, order);
        }
    }

    private static Set<String> orders(String letters) {
        Set<String> orders = new HashSet<>();
        orders(letters, "", orders);
        return orders;
    }

    private static void orders(String left, String order, Set<String> orders) {
        if (left.isEmpty()) {
            orders.add(order);
        }
        for (int i = 0; i < left.length(); i++) {
            orders(left.substring(0, i) + left.substring(i + 1), order + left.charAt(i), orders);
        }
    }

    @Test
    void everyLevelRoundsToItselfAndHalvesGoUp() {
        for (int level = 0; level <= 255; level++) {
            assertEquals(level, encoded("RGB", level / 255f), "level " + level);
            assertEquals(level, encoded("RGB", (level + 0.49f) / 255), "above " + level);
            assertEquals(Math.min(255, level + 1), encoded("RGB", (level + 0.51f) / 255), "above " + level);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"RGB", "GRBW"})
    void whatIsOutsideIsCutOff(String order) {
        byte[] dark = new byte[2 * order.length()];
        byte[] strip = new byte[dark.length];
        float[] nothing = {-1, Float.NaN, Float.NEGATIVE_INFINITY, 1, -0f, -1e-30f, Float.NaN, 0};
        for (Encoder encoder : new Encoder[] {
            StripSpec.plain(2, order).make(), new StripSpec(2, order, Calibration.none(), true).make()
        }) {
            encoder.encode(nothing, strip);
            assertArrayEquals(dark, strip);
            encoder.encode(new float[] {9, 0, 0, 1, 0, Float.POSITIVE_INFINITY, 0, 1}, strip);
            assertEquals(255, strip[order.indexOf('R')] & 0xFF);
            assertEquals(255, strip[order.length() + order.indexOf('G')] & 0xFF);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "RG", "RGG", "RGBB", "RGBWW", "rgb", "XYZ"})
    void noOrderIsRefused(String order) {
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> StripSpec.plain(2, order).make())
                .getMessage();
        assertTrue(message.startsWith("\"" + order + "\" is not an order of channels; write"), message);
    }

    /** First-order error feedback: the sum of n frames is off by less than one level, so their mean by less than 1/n. */
    @Test
    void ditheringIsExactInTheMean() {
        float[] rgba = random(50);
        byte[] strip = new byte[150];
        long[] sums = new long[150];
        Encoder encoder = new StripSpec(50, "RGB", Calibration.none(), true).make();
        for (int frame = 1; frame <= 600; frame++) {
            encoder.encode(rgba, strip);
            for (int i = 0; i < 150; i++) {
                double exact = 255.0 * rgba[i / 3 * 4 + i % 3];
                int level = strip[i] & 0xFF;
                sums[i] += level;
                assertTrue(Math.abs(level - exact) < 1, "never a whole level off");
                assertEquals(exact * frame, (double) sums[i], 1 + frame / 65536.0, "channel " + i + " after " + frame);
            }
        }
    }

    @Test
    void ditheringLeavesWholeLevelsAloneWhateverWasCarried() {
        Encoder encoder = new StripSpec(1, "RGB", Calibration.none(), true).make();
        byte[] strip = new byte[3];
        for (int frame = 0; frame < 2000; frame++) {
            float duty = random.nextFloat();
            encoder.encode(new float[] {duty, duty, duty, 1}, strip);
            int level = random.nextInt(256);
            encoder.encode(new float[] {0, level / 255f, 1, 1}, strip);
            assertEquals(0, strip[0] & 0xFF, "dark stays dark");
            assertEquals(level, strip[1] & 0xFF, 1, "a level");
            assertEquals(255, strip[2] & 0xFF, "full stays full");
        }
    }

    @Test
    void ditheringDoesTheSameEachTime() {
        Encoder one = new StripSpec(10, "GRB", Calibration.none(), true).make();
        Encoder other = new StripSpec(10, "GRB", Calibration.none(), true).make();
        byte[] strip = new byte[30];
        byte[] again = new byte[30];
        for (int frame = 0; frame < 100; frame++) {
            float[] rgba = random(10);
            one.encode(rgba, strip);
            other.encode(rgba, again);
            assertArrayEquals(strip, again);
        }
    }

    /** Pixels of one colour do not blink together: of 100 at a quarter level, about a quarter is lit in each frame. */
    @Test
    void ditheringSpreadsOverThePixels() {
        float[] rgba = new float[400];
        Arrays.fill(rgba, 0.25f / 255);
        byte[] strip = new byte[300];
        Encoder encoder = new StripSpec(100, "RGB", Calibration.none(), true).make();
        for (int frame = 0; frame < 64; frame++) {
            encoder.encode(rgba, strip);
            int lit = 0;
            for (int i = 0; i < 300; i++) {
                lit += strip[i];
            }
            assertEquals(75, lit, 5, "frame " + frame);
        }
    }

    /** The JVM counts the bytes; the same thread counts nothing else meanwhile. */
    @Test
    void encodingAndLookingUpAllocatesNothing() {
        Encoder encoder = new StripSpec(300, "GRBW", Calibration.none(), true).make();
        Gradient gradient = new Gradient(List.of(Light.BLACK, Light.WHITE));
        Ember ember = Ember.of(1600);
        float[] rgba = random(300);
        byte[] strip = new byte[1200];
        frames(2000, encoder, gradient, ember, rgba, strip);
        long before = THREADS.getCurrentThreadAllocatedBytes();
        frames(2000, encoder, gradient, ember, rgba, strip);
        long allocated = THREADS.getCurrentThreadAllocatedBytes() - before;
        assertEquals(0, allocated / 2000, allocated + " bytes in 2000 frames");
    }

    private static void frames(int count, Encoder encoder, Gradient gradient, Ember ember, float[] rgba, byte[] strip) {
        for (int i = 0; i < count; i++) {
            gradient.colour(i / 2000.0, rgba, 4 * (i % 300));
            ember.approach(i, 0.1f, rgba, 4 * ((i + 7) % 300));
            encoder.encode(rgba, strip);
        }
    }

    private static int encoded(String order, float duty) {
        byte[] strip = new byte[order.length()];
        StripSpec.plain(2, order).make().encode(new float[] {duty, duty, duty, 1}, strip);
        return strip[0] & 0xFF;
    }

    private float[] random(int pixels) {
        float[] rgba = new float[4 * pixels];
        for (int i = 0; i < rgba.length; i++) {
            rgba[i] = random.nextFloat();
        }
        return rgba;
    }
}
