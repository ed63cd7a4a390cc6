package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.testing.Alder;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What follows about a printer that does not report it itself. The class's own rules; common practice, no source. */
class DerivedTest {
    private PrinterStatus status = PrinterStatus.nothingHeard();
    private long now;

    private static Bindings bindings(Map<PrinterState, List<String>> words, Quantity... quantities) {
        Map<Quantity, List<Bindings.OfReading>> readings = new EnumMap<>(Quantity.class);
        for (Quantity quantity : quantities) {
            readings.put(quantity, List.of(new Bindings.OfReading(new Source(quantity.key(), PayloadPath.BARE))));
        }
        List<Bindings.OfState> states = words.isEmpty()
                ? List.of()
                : List.of(new Bindings.OfState(new Source("state", PayloadPath.BARE), words));
        return new Bindings(states, readings, Map.of());
    }

    private PrinterState hear(StatusReader reader, String topic, Object payload) {
        status = reader.read(status, topic, Alder.bytes(payload.toString()), ++now);
        return status.state();
    }

    @Test
    void progressFromLayers() {
        StatusReader reader = new StatusReader(bindings(Map.of(), Quantity.JOB_DONE, Quantity.JOB_TOTAL));
        hear(reader, "job.done", 30);
        assertEquals(Double.NaN, status.value(Quantity.JOB_PROGRESS));
        hear(reader, "job.total", 120);
        assertEquals(new Reading(0.25, 2), status.reading(Quantity.JOB_PROGRESS));
        hear(reader, "job.done", 60);
        assertEquals(new Reading(0.5, 3), status.reading(Quantity.JOB_PROGRESS));
        hear(reader, "job.total", 0);
        assertEquals(Double.NaN, status.value(Quantity.JOB_PROGRESS));
    }

    @Test
    void progressFromTimes() {
        StatusReader reader = new StatusReader(bindings(Map.of(), Quantity.JOB_ELAPSED, Quantity.JOB_LEFT));
        hear(reader, "job.elapsed_s", 600);
        assertEquals(Double.NaN, status.value(Quantity.JOB_PROGRESS));
        hear(reader, "job.left_s", 1800);
        assertEquals(0.25, status.value(Quantity.JOB_PROGRESS), 1e-12);
        assertEquals(PrinterState.PRINTING, status.state());
        hear(reader, "job.left_s", 0);
        assertEquals(1, status.value(Quantity.JOB_PROGRESS), 0);
        assertEquals(PrinterState.DONE, status.state());
    }

    @Test
    void progressThatIsToldIsNotDerived() {
        StatusReader reader =
                new StatusReader(bindings(Map.of(), Quantity.JOB_PROGRESS, Quantity.JOB_DONE, Quantity.JOB_TOTAL));
        hear(reader, "job.done", 30);
        hear(reader, "job.total", 120);
        assertEquals(Double.NaN, status.value(Quantity.JOB_PROGRESS));
    }

    /** Begins more than 4 °C below, ends at 2 °C below. */
    @Test
    void warmingHasABandInWhichItStaysWhatItIs() {
        StatusReader reader = new StatusReader(bindings(Map.of(), Quantity.BED_ACTUAL, Quantity.BED_SETPOINT));
        assertEquals(PrinterState.IDLE, hear(reader, "bed.actual_C", 57));
        assertEquals(PrinterState.IDLE, hear(reader, "bed.setpoint_C", 60));
        assertEquals(PrinterState.WARMING, hear(reader, "bed.actual_C", 55.9));
        assertEquals(PrinterState.WARMING, hear(reader, "bed.actual_C", 57.9));
        assertEquals(PrinterState.IDLE, hear(reader, "bed.actual_C", 58));
        assertEquals(PrinterState.IDLE, hear(reader, "bed.actual_C", 56));
    }

    /** The same band when the printer reports its state but has no word for warming, so that the readings decide. */
    @Test
    void warmingThatTheReadingsTellInsteadOfThePrinterHasTheSameBand() {
        StatusReader reader = new StatusReader(
                bindings(Map.of(PrinterState.PRINTING, List.of("RUN")), Quantity.BED_ACTUAL, Quantity.BED_SETPOINT));
        hear(reader, "bed.actual_C", 57);
        hear(reader, "bed.setpoint_C", 60);
        assertEquals(PrinterState.PRINTING, hear(reader, "state", "RUN"), "3 °C below, not warming before");
        assertEquals(PrinterState.WARMING, hear(reader, "bed.actual_C", 55.9));
        assertEquals(PrinterState.WARMING, hear(reader, "bed.actual_C", 57.9));
        assertEquals(PrinterState.WARMING, hear(reader, "state", "RUN"), "what is told again does not end it");
        assertEquals(PrinterState.PRINTING, hear(reader, "bed.actual_C", 58));
        assertEquals(PrinterState.PRINTING, hear(reader, "bed.actual_C", 56));
    }

    @ParameterizedTest(name = "told {0}, bed 20 of {1}, progress {2}: {3}")
    @CsvSource({
        "READY, 0, 0, IDLE",
        "READY, 60, 0, WARMING",
        "READY, 0, 1, DONE",
        "RUN, 60, 0, WARMING",
        "RUN, 60, 0.5, PRINTING",
        "RUN, 0, 1, PRINTING",
        "ALARM, 60, 0, FAULT",
    })
    void readingsTellTheStatesThatThePrinterHasNoWordFor(
            String word, double target, double progress, PrinterState state) {
        Map<PrinterState, List<String>> words = Map.of(
                PrinterState.IDLE, List.of("READY"),
                PrinterState.PRINTING, List.of("RUN"),
                PrinterState.FAULT, List.of("ALARM"));
        StatusReader reader =
                new StatusReader(bindings(words, Quantity.BED_ACTUAL, Quantity.BED_SETPOINT, Quantity.JOB_PROGRESS));
        hear(reader, "state", word);
        hear(reader, "bed.actual_C", 20);
        hear(reader, "bed.setpoint_C", target);
        assertEquals(state, hear(reader, "job.progress", progress));
        hear(reader, "bed.setpoint_C", 0);
        hear(reader, "job.progress", 0);
        assertEquals(word.equals("READY"), status.state() == PrinterState.IDLE, "what was told is not forgotten");
    }

    @Test
    void aPrinterThatHasAWordForItIsBelieved() {
        Map<PrinterState, List<String>> words =
                Map.of(PrinterState.WARMING, List.of("HEAT"), PrinterState.PRINTING, List.of("RUN"));
        StatusReader reader = new StatusReader(bindings(words, Quantity.BED_ACTUAL, Quantity.BED_SETPOINT));
        hear(reader, "bed.actual_C", 20);
        hear(reader, "bed.setpoint_C", 60);
        assertEquals(PrinterState.PRINTING, hear(reader, "state", "RUN"));
    }

    @Test
    void nothingIsDerivedBeforeThePrinterHasSpoken() {
        StatusReader reader =
                new StatusReader(bindings(Map.of(PrinterState.PRINTING, List.of("RUN")), Quantity.BED_ACTUAL));
        assertEquals(PrinterState.SILENT, hear(reader, "bed.actual_C", 20));
    }
}
