package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class MessageTest {
    private static final Message THREE = Bodies.of(MessageType.SHOWN, 0xFE, 0x01, 0x80);

    @Test
    void saysWhatItIs() {
        assertEquals(MessageType.SHOWN, THREE.type());
        assertEquals(0x83, THREE.typeCode());
        assertEquals(9, THREE.sequence());
        assertEquals(3, THREE.bodyLength());
        assertArrayEquals(new byte[] {(byte) 0xFE, 0x01, (byte) 0x80}, THREE.body());
    }

    /** wire.md, section 1: numbers are sent high byte first, and every number is unsigned. */
    @Test
    void readsUnsignedNumbersHighByteFirst() throws MalformedMessageException {
        assertEquals(0xFE, THREE.u8(0));
        assertEquals(0xFE01, THREE.u16(0));
        assertEquals(0x0180, THREE.u16(1));
        assertEquals(0x80, THREE.u8Or(2, 7));
        byte[] target = new byte[4];
        THREE.copy(1, 2, target, 1);
        assertArrayEquals(new byte[] {0, 0x01, (byte) 0x80, 0}, target);
    }

    /** After the body, the buffer holds what an earlier packet left there. */
    @Test
    void readsNothingBehindItsBody() {
        assertThrows(MalformedMessageException.class, () -> THREE.u8(3));
        assertThrows(MalformedMessageException.class, () -> THREE.u16(2));
        assertThrows(MalformedMessageException.class, () -> THREE.copy(1, 3, new byte[3], 0));
        assertEquals(7, THREE.u8Or(3, 7));
        assertEquals(7, THREE.u8Or(4, 7));
    }

    @Test
    void namesTheMessageThatIsTooShort() {
        MalformedMessageException e = assertThrows(MalformedMessageException.class, () -> THREE.u8(3));
        assertEquals("SHOWN has a body of 3 bytes, too short", e.getMessage());
        assertEquals(-1, e.at());
    }
}
