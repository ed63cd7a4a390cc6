package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PassingIdsTest {
    private final PassingIds ids = new PassingIds();

    @ParameterizedTest
    @CsvSource({"1046, 1047", "7f3a91c2-0b1d, 99ab01cd-77fe"})
    void theNextIdWillBeAnother(String old, String now) {
        assertEquals(Optional.empty(), ids.without("fab/job/" + old + "/done", 0));
        Optional<String> last = Optional.empty();
        for (int second = 10; second < 20; second++) {
            last = ids.without("fab/job/" + now + "/done", second);
        }
        assertEquals(Optional.of("fab/job/+/done"), last);
        assertEquals(Optional.of("fab/job/+/done"), ids.without("fab/job/10480000/done", 30));
    }

    @Test
    void aNumberThatGrowsWithEachMessagePasses() {
        Optional<String> last = Optional.empty();
        for (int i = 0; i < 20; i++) {
            last = ids.without("fab/report/" + (5000 + i), i);
        }
        assertEquals(Optional.of("fab/report/+"), last);
    }

    /** Two printers with numbers for names. */
    @Test
    void idsThatTakeTurnsStay() {
        for (int second = 0; second < 60; second++) {
            assertEquals(Optional.empty(), ids.without("fab/" + (second % 2 == 0 ? 101 : 102) + "/bed", second));
        }
    }

    @Test
    void oneIdAloneStays() {
        for (int second = 0; second < 60; second++) {
            assertEquals(Optional.empty(), ids.without("fab/1047/bed", second));
        }
    }
}
