package dev.lampwright.protocol;

/**
 * Consistent Overhead Byte Stuffing: removes the zeros from a packet, so that a zero can end it.
 *
 * <p>Source: Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2), 1999. Decoding happens byte by byte in {@link MessageReader}.
 */
public final class Cobs {
    private static final int FULL_BLOCK = 0xFF;

    private Cobs() {}

    /**
     * The maximum length of an encoded packet in bytes, without the zero that ends it.
     *
     * @param length bytes of the packet, 0 or more
     * @return {@code length} plus one byte for each started run of 254, at least one
     */
    public static int encodedLimit(int length) {
        return length + Math.max(1, (length + 253) / 254);
    }

    /**
     * Encodes a packet. The zero that ends it is not written.
     *
     * @param source the packet
     * @param length bytes of the packet, from index 0
     * @param target where to write, with room for {@link #encodedLimit} bytes from {@code at}; not {@code source}
     * @param at index of the first byte to write
     * @return index after the last byte written
     */
    public static int encode(byte[] source, int length, byte[] target, int at) {
        int codeAt = at;
        int out = at + 1;
        for (int i = 0; i < length; i++) {
            byte value = source[i];
            if (value != 0) {
                target[out++] = value;
            }
            boolean full = out - codeAt == FULL_BLOCK;
            if (value == 0 || (full && i + 1 < length)) {
                target[codeAt] = (byte) (out - codeAt);
                codeAt = out++;
            }
        }
        target[codeAt] = (byte) (out - codeAt);
        return out;
    }
}
