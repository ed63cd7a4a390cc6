package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class Crc16Test {
    /** Catalogue of parametrised CRC algorithms, CRC-16/IBM-3740: check value 0x29B1. */
    @Test
    void givesTheCatalogueCheckValue() {
        byte[] bytes = "123456789".getBytes(StandardCharsets.US_ASCII);
        assertEquals(0x29B1, Crc16.of(bytes, 0, bytes.length));
    }

    @Test
    void startsAnywhereInTheArray() {
        byte[] bytes = "..123456789".getBytes(StandardCharsets.US_ASCII);
        assertEquals(0x29B1, Crc16.of(bytes, 2, 9));
    }
}
