package dev.lampwright.protocol;

/**
 * The checksum of the wire, CRC-16/IBM-3740: polynomial 0x1021, start 0xFFFF, not reflected, no final xor.
 *
 * <p>Source: catalogue of parametrised CRC algorithms, entry CRC-16/IBM-3740; check value 0x29B1.
 */
public final class Crc16 {
    private static final int START = 0xFFFF;

    private static final int POLYNOMIAL = 0x1021;

    /** The checksum of a byte after start 0, and of that byte followed by one, two and three zeros. */
    private static final char[] TABLE = table();

    private static final char[] TABLE_1 = withZero(TABLE);
    private static final char[] TABLE_2 = withZero(TABLE_1);
    private static final char[] TABLE_3 = withZero(TABLE_2);

    private Crc16() {}

    /**
     * The checksum of a run of bytes.
     *
     * @param bytes the array with the run
     * @param from index of its first byte
     * @param length bytes in the run
     * @return the checksum, 0 to 0xFFFF
     */
    public static int of(byte[] bytes, int from, int length) {
        int crc = START;
        int at = from;
        int end = from + length;
        for (; at + 4 <= end; at += 4) {
            crc = TABLE_3[(crc >> 8) ^ (bytes[at] & 0xFF)]
                    ^ TABLE_2[(crc & 0xFF) ^ (bytes[at + 1] & 0xFF)]
                    ^ TABLE_1[bytes[at + 2] & 0xFF]
                    ^ TABLE[bytes[at + 3] & 0xFF];
        }
        for (; at < end; at++) {
            crc = ((crc << 8) & 0xFFFF) ^ TABLE[(crc >> 8) ^ (bytes[at] & 0xFF)];
        }
        return crc;
    }

    private static char[] withZero(char[] table) {
        char[] longer = new char[table.length];
        for (int i = 0; i < table.length; i++) {
            longer[i] = (char) ((table[i] << 8) ^ TABLE[table[i] >> 8]);
        }
        return longer;
    }

    private static char[] table() {
        char[] table = new char[256];
        for (int index = 0; index < table.length; index++) {
            int crc = index << 8;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 0x8000) != 0 ? (crc << 1) ^ POLYNOMIAL : crc << 1;
            }
            table[index] = (char) crc;
        }
        return table;
    }
}
