package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.payload.Quantity;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The class's own rules; common practice, no source. NaN is a quantity that the printer does not report. */
final class StateGuessTest {
    @ParameterizedTest(name = "progress {0}, nozzle {1} of {2}, bed {3} of {4}: {5}")
    @CsvSource({
        "NaN, NaN, NaN, NaN, NaN, IDLE",
        "NaN,  20,   0,  20,   0, IDLE",
        "NaN,  20, 215,  20,   0, WARMING",
        "NaN, 215,   0,  30,  60, WARMING",
        "  0, 100, 215,  60,  60, WARMING",
        "NaN, 214, 215, NaN, NaN, IDLE",
        "  0, 211, 215, NaN, NaN, IDLE",
        "  0, 210, 215, NaN, NaN, WARMING",
        "0.4, 200, 215,  60,  60, PRINTING",
        "0.4, NaN, NaN, NaN, NaN, PRINTING",
        "0.4,  80,   0,  40,   0, IDLE",
        "  1, 215,   0,  60,   0, DONE",
        "  1, NaN, NaN, NaN, NaN, DONE",
        "  1,  25, 215,  25,  60, WARMING",
        "NaN, NaN, 215, NaN, NaN, IDLE",
    })
    void guesses(
            double progress, double nozzle, double nozzleTarget, double bed, double bedTarget, PrinterState state) {
        PrinterStatus status = PrinterStatus.nothingHeard()
                .withReading(Quantity.JOB_PROGRESS, progress, 1)
                .withReading(Quantity.NOZZLE_ACTUAL, nozzle, 1)
                .withReading(Quantity.NOZZLE_SETPOINT, nozzleTarget, 1)
                .withReading(Quantity.BED_ACTUAL, bed, 1)
                .withReading(Quantity.BED_SETPOINT, bedTarget, 1);
        assertEquals(state, new StateGuess(List.of()).of(status, PrinterState.IDLE));
    }
}
