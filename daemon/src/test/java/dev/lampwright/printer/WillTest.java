package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Source;
import dev.lampwright.testing.Alder;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class WillTest {
    private static final long SECOND = 1_000_000_000L;
    private static final String LINK = "shop/alder/link";

    private final StatusReader reader =
            new StatusReader(new Bindings(Alder.bindings().states(), Map.of(), Map.of())
                    .withWill(new Bindings.OfWill(new Source(LINK, PayloadPath.BARE), List.of("offline", "LOST*"))));

    private final PrinterStatus printing = read(PrinterStatus.nothingHeard(), Alder.JOB, "{\"phase\":\"RUN\"}", 1);

    private PrinterStatus read(PrinterStatus before, String topic, String payload, long second) {
        return reader.read(before, topic, Alder.bytes(payload), second * SECOND);
    }

    @ParameterizedTest
    @ValueSource(strings = {"offline", "OffLine", " offline\n", "lost power"})
    void saysThatThePrinterIsGone(String word) {
        PrinterStatus gone = read(printing, LINK, word, 2);
        assertTrue(gone.isGone());
        assertEquals(PrinterState.SILENT, gone.state());
        assertEquals(PrinterState.SILENT, gone.stateAt(2 * SECOND, 20 * SECOND));
    }

    @Test
    void anyOtherWordSaysThatItIsThere() {
        PrinterStatus back = read(read(printing, LINK, "offline", 2), LINK, "online", 3);
        assertFalse(back.isGone());
        assertEquals(PrinterState.PRINTING, back.state());
        assertEquals(3 * SECOND, back.heardAtNanos());
    }

    @Test
    void whatIsToldMeanwhileCountsOnceItIsBack() {
        PrinterStatus gone = read(read(printing, LINK, "offline", 2), Alder.JOB, "{\"phase\":\"PREHEAT\"}", 3);
        assertEquals(PrinterState.SILENT, gone.state());
        assertEquals(PrinterState.WARMING, gone.back().state());
    }

    @Test
    void whatIsNoWordChangesNothing() {
        assertFalse(read(printing, LINK, "", 2).isGone());
        assertSame(printing, printing.back());
    }

    @Test
    void theTopicIsSubscribedTo() {
        Bindings bindings = new Bindings(List.of(), Map.of(), Map.of())
                .withWill(new Bindings.OfWill(new Source(LINK, PayloadPath.BARE), List.of("offline")));
        assertEquals(List.of(LINK), bindings.topicFilters());
    }
}
