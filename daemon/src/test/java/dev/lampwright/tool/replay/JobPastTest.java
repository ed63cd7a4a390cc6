package dev.lampwright.tool.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.history.PastJobs;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.StatusLines.Entry;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** A job of the history as if it had been recorded. */
class JobPastTest {
    private static PrinterStatus at(List<Entry> entries, long seconds) {
        PrinterStatus status = PrinterStatus.nothingHeard();
        for (Entry entry : entries) {
            if (entry.atNanos() <= TimeUnit.SECONDS.toNanos(seconds)) {
                status = entry.status();
            }
        }
        return status;
    }

    /** Warming for 100 s while the bed heats up from 20 to 60 °C, then printing for 300 s, up to 90 %. */
    @Test
    void statesTemperaturesAndProgressAreThere() {
        List<Entry> entries = JobPast.entries(PastJobs.account(), PastJobs.job(), "birch");
        assertEquals("birch", entries.get(0).printer());
        assertEquals(PrinterState.WARMING, at(entries, 0).state());
        assertEquals(PrinterState.PRINTING, at(entries, 100).state());
        assertEquals(20, at(entries, 0).value(Quantity.BED_ACTUAL), 0.01);
        assertEquals(40, at(entries, 50).value(Quantity.BED_ACTUAL), 0.01);
        assertEquals(60, at(entries, 200).value(Quantity.BED_ACTUAL), 0.01);
        assertEquals(60, at(entries, 0).value(Quantity.BED_SETPOINT), 0.01);
        assertTrue(Double.isNaN(at(entries, 50).value(Quantity.JOB_PROGRESS)), "not while it warms");
        assertEquals(0.45, at(entries, 250).value(Quantity.JOB_PROGRESS), 0.01);
        assertEquals(0.9, at(entries, 400).value(Quantity.JOB_PROGRESS), 0.001);
        long before = 0;
        for (Entry entry : entries) {
            assertTrue(entry.atNanos() >= before);
            before = entry.atNanos();
        }
    }
}
