package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlausibleTest {
    /** Limits in °F and K by the formulas of NIST Special Publication 811, appendix B.8 (from memory). */
    @ParameterizedTest
    @CsvSource({
        "JOB_PROGRESS, PERCENT, 145, 0 to 100 percent",
        "JOB_PROGRESS, SHARE, 1.45, 0 to 1",
        "JOB_PROGRESS, OWN, 145, 0 to 1",
        "JOB_PROGRESS, OWN, -0.5, 0 to 1",
        "JOB_PROGRESS, OWN, 35, '0 to 1; if it is in percent, set unit = \"percent\"'",
        "BED_ACTUAL, OWN, 601, -50 to 600 °C",
        "BED_ACTUAL, FAHRENHEIT, 1200, -58 to 1112 °F",
        "BED_ACTUAL, KELVIN, 200, 223 to 873 K",
        "JOB_LEFT, MINUTES, -1, 0 to 31536000 s",
        "JOB_LEFT, SECONDS, 1e23, 0 to 31536000 s",
        "JOB_ELAPSED, HOURS, 8761, 0 to 31536000 s",
        "JOB_TOTAL, OWN, -1, 0 and more",
        "JOB_TOTAL, OWN, NaN, 0 and more"
    })
    void theRangeIsToldInTheUnitOfTheBinding(Quantity quantity, Unit unit, double told, String range) {
        UnreadableException e = assertThrows(UnreadableException.class, () -> Plausible.value(quantity, unit, told));
        assertEquals("the value is out of range, which is " + range, e.getMessage());
    }

    @Test
    void whatCanBeTrueIsTaken() throws UnreadableException {
        assertEquals(0.45, Plausible.value(Quantity.JOB_PROGRESS, Unit.PERCENT, 45), 1e-12);
        assertEquals(1, Plausible.value(Quantity.JOB_PROGRESS, Unit.PERCENT, 100.5));
        assertEquals(0, Plausible.value(Quantity.JOB_PROGRESS, -0.005));
        assertEquals(600, Plausible.value(Quantity.BED_ACTUAL, 600));
        assertEquals(120, Plausible.value(Quantity.JOB_LEFT, Unit.MINUTES, 2));
        assertEquals(31_536_000, Plausible.value(Quantity.JOB_LEFT, Unit.HOURS, 8760));
    }
}
