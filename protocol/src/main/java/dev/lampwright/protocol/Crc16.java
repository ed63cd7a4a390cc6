package dev.lampwright.protocol;

/**
 * The checksum of the wire, CRC-16/IBM-3740: polynomial 0x1021, start 0xFFFF, not reflected, nothing xored at the end.
 *
 * <p>Source: catalogue of parametrised CRC algorithms, entry CRC-16/IBM-3740; check value 0x29B1.
 */
public final class Crc16 {
    private static final int START = 0xFFFF;

    private static final int POLYNOMIAL = 0x1021;
    private static final char[] TABLE = table();

    private Crc16() {}

    /**
     * The checksum of a run of bytes.
     *
     * @param bytes where the run stands
     * @param from index of its first byte
     * @param length bytes in the run
     * @return the checksum, 0 to 0xFFFF
     */
    public static int of(byte[] bytes, int from, int length) {
        int crc = START;
        for (int i = from; i < from + length; i++) {
            crc = ((crc << 8) & 0xFFFF) ^ TABLE[(crc >> 8) ^ (bytes[i] & 0xFF)];
        }
        return crc;
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
