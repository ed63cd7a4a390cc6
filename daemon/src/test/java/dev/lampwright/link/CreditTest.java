package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Credit by the rules of {@code firmware-notes/wire.md}, section 2. */
class CreditTest {
    private final Credit credit = new Credit();

    @Test
    void letsOneMessageBeUnansweredAtFirst() {
        assertTrue(credit.left());
        credit.spend(1, 100);
        assertFalse(credit.left());
        assertEquals(0, credit.answered(1));
        assertTrue(credit.left());
    }

    @Test
    void letsAsManyBeUnansweredAsTheControllerSays() {
        credit.restart(3);
        for (int sequence = 254; sequence < 257; sequence++) {
            assertTrue(credit.left());
            credit.spend(sequence & 0xFF, 100);
        }
        assertFalse(credit.left());
    }

    @Test
    void anAnswerTellsThatOlderMessagesAreLost() {
        credit.restart(3);
        credit.spend(255, 100);
        credit.spend(0, 100);
        credit.spend(1, 100);
        assertEquals(1, credit.answered(0));
        assertEquals(Credit.NOT_WAITED_FOR, credit.answered(255));
        assertEquals(0, credit.answered(1));
        assertTrue(credit.idle());
    }

    @Test
    void ignoresAnAnswerThatNothingWaitsFor() {
        credit.spend(5, 100);
        assertEquals(Credit.NOT_WAITED_FOR, credit.answered(6));
        assertFalse(credit.left());
    }

    @Test
    void givesCreditBackOnceTheTimeIsOver() {
        credit.restart(2);
        credit.spend(5, 100);
        credit.spend(6, 200);
        assertEquals(100, credit.oldestDeadline());
        assertEquals(0, credit.expire(99));
        assertEquals(1, credit.expire(100));
        assertEquals(200, credit.oldestDeadline());
        assertEquals(1, credit.expire(1000));
        assertTrue(credit.idle());
    }

    @Test
    void tellsForHowLongNoAnswerHasComeWhateverWasSentSince() {
        assertEquals(0, credit.silentNanos(50));
        credit.spend(5, 100);
        credit.expire(100);
        credit.spend(6, 200);
        assertEquals(150, credit.silentNanos(250));
        credit.answered(6);
        assertEquals(0, credit.silentNanos(250));
        credit.spend(7, 300);
        assertEquals(10, credit.silentNanos(310));
    }

    @Test
    void tellsTimeOnAClockThatOverflows() {
        credit.spend(5, Long.MIN_VALUE + 10);
        assertEquals(0, credit.expire(Long.MAX_VALUE));
        assertEquals(1, credit.expire(Long.MIN_VALUE + 10));
    }

    @Test
    void givesOneCreditToAControllerThatSaysNone() {
        credit.restart(0);
        assertTrue(credit.left());
        credit.spend(1, 100);
        assertFalse(credit.left());
    }

    @Test
    void holdsTheMostCreditsThereCanBe() {
        credit.restart(255);
        for (int round = 0; round < 3; round++) {
            for (int sequence = 0; sequence < 255; sequence++) {
                credit.spend(sequence, 100);
            }
            assertFalse(credit.left());
            assertEquals(254, credit.answered(254));
        }
    }
}
