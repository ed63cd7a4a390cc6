package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Against Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2), 1999. */
class CobsTest {
    private static final HexFormat HEX = HexFormat.of();

    /** The paper's worked example of section 3, the start of an IP packet (bytes from memory). */
    @Test
    void encodesThePapersExample() {
        assertEquals("024501042c4c79010540064f37", encoded("4500002c4c79000040064f37"));
    }

    /** The paper's rules: a code of n stands for n−1 bytes and a zero; 0xFF for 254 bytes and no zero. */
    @Test
    void followsThePapersRules() {
        assertEquals("01", encoded(""));
        assertEquals("0101", encoded("00"));
        assertEquals("010101", encoded("0000"));
        assertEquals("03112201" + "0233", encoded("1122000033"));
        String full = HEX.formatHex(nonZero(254));
        assertEquals("ff" + full, encoded(full));
        assertEquals("ff" + full + "0211", encoded(full + "11"));
        assertEquals("ff" + full + "0101", encoded(full + "00"));
        assertEquals("01ff" + full, encoded("00" + full));
    }

    /** The same bound at the ends of the blocks of 254: one byte for each block begun. */
    @Test
    void theBoundIsReachedByBytesWithoutZero() {
        for (int length : new int[] {1, 253, 254, 255, 508, 509, 1024}) {
            byte[] target = new byte[length + 20];
            assertEquals(Cobs.encodedLimit(length), Cobs.encode(nonZero(length), length, target, 0), "" + length);
        }
        assertEquals(1, Cobs.encodedLimit(0));
    }

    /** The paper's bound: at most one byte more for every 254, and at least one. */
    @Test
    void neverTakesMoreThanTheBoundAndNeverHoldsAZero() {
        SplittableRandom chance = new SplittableRandom(1);
        for (int trial = 0; trial < 5000; trial++) {
            byte[] data = sparseZeros(chance, chance.nextInt(1200));
            byte[] wire = encode(data);
            assertTrue(wire.length <= data.length + Math.max(1, (data.length + 253) / 254), "length " + data.length);
            assertFalse(contains(wire, 0));
            assertArrayEquals(data, decode(wire));
        }
    }

    private static String encoded(String hex) {
        return HEX.formatHex(encode(HEX.parseHex(hex)));
    }

    private static byte[] encode(byte[] data) {
        byte[] target = new byte[Cobs.encodedLimit(data.length)];
        return Arrays.copyOf(target, Cobs.encode(data, data.length, target, 0));
    }

    /** The paper's decoder, written as plainly as in the paper. */
    private static byte[] decode(byte[] wire) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int at = 0;
        while (at < wire.length) {
            int code = wire[at++] & 0xFF;
            for (int i = 1; i < code; i++) {
                out.write(wire[at++]);
            }
            if (code != 0xFF && at < wire.length) {
                out.write(0);
            }
        }
        return out.toByteArray();
    }

    private static byte[] nonZero(int length) {
        byte[] bytes = new byte[length];
        IntStream.range(0, length).forEach(i -> bytes[i] = (byte) (i % 255 + 1));
        return bytes;
    }

    private static byte[] sparseZeros(SplittableRandom chance, int length) {
        byte[] bytes = new byte[length];
        int rarity = 1 + chance.nextInt(600);
        IntStream.range(0, length)
                .forEach(i -> bytes[i] = (byte) (chance.nextInt(rarity) == 0 ? 0 : 1 + chance.nextInt(255)));
        return bytes;
    }

    private static boolean contains(byte[] bytes, int value) {
        return IntStream.range(0, bytes.length).anyMatch(i -> bytes[i] == value);
    }
}
