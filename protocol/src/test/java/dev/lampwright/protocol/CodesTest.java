package dev.lampwright.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Codes of one byte, by wire.md, section 3. */
class CodesTest {
    @Test
    void complaintsAreNumberedAsInTheTable() {
        assertEquals(Complaint.BROKEN, Complaint.of(1));
        assertEquals(Complaint.TOO_LONG, Complaint.of(2));
        assertEquals(Complaint.UNKNOWN_TYPE, Complaint.of(3));
        assertEquals(Complaint.VERSION, Complaint.of(4));
        assertEquals(Complaint.NOT_SET_UP, Complaint.of(5));
        assertEquals(Complaint.LENGTH, Complaint.of(6));
        assertEquals(Complaint.VALUE, Complaint.of(7));
        assertEquals(Complaint.PART_ORDER, Complaint.of(8));
        assertEquals(Complaint.CEILING_BELOW_DARK, Complaint.of(9));
    }

    @Test
    void aComplaintOfALaterVersionIsAnother() {
        assertEquals(Complaint.OTHER, Complaint.of(0));
        for (int code = 10; code < 256; code++) {
            assertEquals(Complaint.OTHER, Complaint.of(code));
        }
    }

    /** Broken and overlong packets have no known sequence number, and code 9 comes in addition to IN_FORCE, which is the answer. */
    @Test
    void allComplaintsAnswerButThree() {
        Set<Complaint> answers =
                Arrays.stream(Complaint.values()).filter(Complaint::isAnswer).collect(Collectors.toSet());
        assertEquals(
                Set.of(
                        Complaint.OTHER,
                        Complaint.UNKNOWN_TYPE,
                        Complaint.VERSION,
                        Complaint.NOT_SET_UP,
                        Complaint.LENGTH,
                        Complaint.VALUE,
                        Complaint.PART_ORDER),
                answers);
    }

    @Test
    void eachComplaintHasWordsOfItsOwn() {
        assertEquals(
                Complaint.values().length,
                Arrays.stream(Complaint.values())
                        .map(Complaint::words)
                        .distinct()
                        .count());
        assertFalse(Arrays.stream(Complaint.values()).map(Complaint::words).anyMatch(String::isBlank));
    }

    @ParameterizedTest
    @EnumSource(WhenSilent.class)
    void whatIsShownInSilenceIsReadBack(WhenSilent one) throws MalformedMessageException {
        assertEquals(one, WhenSilent.read(Bodies.of(MessageType.REST, one.code()), 0));
    }

    @Test
    void codesThatStandForNothingAreRefused() throws MalformedMessageException {
        MalformedMessageException silent = assertThrows(
                MalformedMessageException.class, () -> WhenSilent.read(Bodies.of(MessageType.SETUP, 0, 3), 1));
        assertEquals(1, silent.at());
        assertEquals(Shown.RESTING, Shown.read(Bodies.of(MessageType.SHOWN, 3)));
        MalformedMessageException shown =
                assertThrows(MalformedMessageException.class, () -> Shown.read(Bodies.of(MessageType.SHOWN, 4)));
        assertEquals(0, shown.at());
    }

    /** HERE, offset 20: bit 0 says that it listens while it drives; the other bits mean nothing. */
    @Test
    void whetherAControllerListensWhileItDrivesIsBitZero() throws MalformedMessageException {
        int[] body = new int[21];
        assertFalse(Here.read(Bodies.of(MessageType.HERE, Bodies.with(body, 20, 0xFE)))
                .listensWhileDriving());
        for (boolean listens : new boolean[] {false, true}) {
            Here here = new Here(1, "1.2.3", 5, 300, 1024, 6, 4, 10_000, listens);
            MessageWriter writer = new MessageWriter(21);
            byte[] wire = Recorder.wire(writer, here.write(writer, 0));
            byte[] sent = Vectors.HEX.parseHex(Recorder.of(wire).messages.get(0).body());
            int[] unsigned = new int[sent.length];
            Arrays.setAll(unsigned, i -> sent[i] & 0xFF);
            assertEquals(listens ? 1 : 0, unsigned[20]);
            assertEquals(here, Here.read(Bodies.of(MessageType.HERE, unsigned)));
        }
    }
}
