package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class CurrentHistoryTest {
    private final CurrentHistory history = new CurrentHistory();

    private void add(int count) {
        for (int i = 0; i < count; i++) {
            history.add((int) history.end());
        }
    }

    @Test
    void nothingIsKnownAtFirst() {
        assertEquals(0, history.since(0).milliamps().size());
    }

    @Test
    void secondsAreCountedFromTheStart() {
        add(10);
        CurrentHistory.Stretch stretch = history.since(7);
        assertEquals(7, stretch.from());
        assertEquals(List.of(7, 8, 9), stretch.milliamps());
        assertEquals(10, stretch.end());
    }

    @Test
    void theOldestGo() {
        add(CurrentHistory.SECONDS + 5);
        CurrentHistory.Stretch stretch = history.since(0);
        assertEquals(5, stretch.from());
        assertEquals(CurrentHistory.SECONDS, stretch.milliamps().size());
        assertEquals(5, stretch.milliamps().get(0));
        assertEquals(CurrentHistory.SECONDS + 4, stretch.milliamps().get(CurrentHistory.SECONDS - 1));
    }

    @Test
    void whatIsYetToComeIsNotKnown() {
        add(3);
        assertEquals(0, history.since(99).milliamps().size());
        assertEquals(3, history.since(-5).milliamps().size());
    }
}
