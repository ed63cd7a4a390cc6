package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class DeliveriesTest {
    private final Deliveries deliveries = new Deliveries();

    @Test
    void theLatestIsToldOnce() {
        deliveries.sent(7, 1000);
        deliveries.sent(8, 2000);
        deliveries.shown(7, 1500);
        deliveries.shown(8, 2100);
        assertEquals(500, deliveries.takeLatest());
        assertEquals(0, deliveries.takeLatest());
    }

    /** Each answer counts once, and an answer to something that was not sent does not count. */
    @Test
    void onlyWhatWasSentCounts() {
        deliveries.sent(7, 1000);
        deliveries.shown(7, 1010);
        deliveries.shown(7, 9000);
        deliveries.shown(9, 9000);
        assertEquals(10, deliveries.takeLatest());
    }

    @Test
    void aControllerThatIsLitAgainKnowsNothingOfEarlierFrames() {
        deliveries.sent(7, 1000);
        assertFalse(deliveries.takeRelit());
        deliveries.relit();
        deliveries.shown(7, 9000);
        assertEquals(0, deliveries.takeLatest());
        assertTrue(deliveries.takeRelit());
        assertFalse(deliveries.takeRelit());
    }
}
