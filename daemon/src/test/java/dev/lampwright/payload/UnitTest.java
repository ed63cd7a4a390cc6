package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitTest {
    /** The two points that once defined the scale, where both scales meet, and NIST SP 811 B.9's formula; all from memory. */
    @ParameterizedTest
    @CsvSource({"32, 0", "212, 100", "-40, -40", "98.6, 37", "451, 232.7777777777778"})
    void fahrenheit(double fahrenheit, double celsius) {
        assertEquals(celsius, Unit.FAHRENHEIT.toOwn(fahrenheit), 1e-9);
    }

    /** The triple point of water, 273.16 K = 0.01 °C (SI Brochure, 8th edition, from memory). */
    @Test
    void kelvin() {
        assertEquals(0.01, Unit.KELVIN.toOwn(273.16), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "CELSIUS, 21.5, 21.5",
        "SHARE, 0.4, 0.4",
        "PERCENT, 40, 0.4",
        "PERMILLE, 345, 0.345",
        "MILLISECONDS, 1500, 1.5",
        "SECONDS, 7, 7",
        "MINUTES, 1.5, 90",
        "HOURS, 2, 7200",
        "ISO_8601, 90, 90",
        "CLOCK, 90, 90",
        "OWN, 3, 3"
    })
    void others(Unit unit, double value, double own) {
        assertEquals(own, unit.toOwn(value), 1e-12);
    }

    /** Decimal commas: 22nd CGPM (2003), resolution 10, from memory. The rest is common practice, no source. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "CELSIUS | 41.5 °C | 41.5",
                "CELSIUS | 41.5C | 41.5",
                "CELSIUS | -4 degC | -4",
                "CELSIUS | 41.5 | 41.5",
                "FAHRENHEIT | 212°F | 212",
                "PERCENT | 42% | 42",
                "PERCENT | 42 Percent | 42",
                "MINUTES | 12 min | 12",
                "MINUTES | 12m | 12",
                "SECONDS | 1e3 s | 1000",
                "ISO_8601 | PT1M | 60",
                "CLOCK | 0:01:00 | 60",
                "SHORT_CLOCK | 1:30 | 5400",
                "STOPWATCH | 90:30 | 5430",
                "PARTS | 1h 30m | 5400",
                "PARTS | 2 days, 3 hours | 183600",
                "PARTS | 12 min 05 s | 725",
                "PARTS | 45m | 2700",
                "OWN | 5 | 5",
                "OWN | 59,5 | 59.5",
                "CELSIUS | 59,5 | 59.5",
            })
    void numbersWithTheirUnit(Unit unit, String text, double value) throws UnreadableException {
        assertEquals(value, Measure.of(text, unit), 0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "CELSIUS | 41.5 °F",
                "CELSIUS | 41,5 °C",
                "CELSIUS | T41.5",
                "CELSIUS | °C",
                "CELSIUS | 41.5 °C 60",
                "PERCENT | 42 s",
                "OWN | 42 °C",
                "OWN | 1,234,5",
                "OWN | 59,",
                "OWN | ,5",
                "OWN | 59,5e3",
                "OWN | 59, 5",
                "ISO_8601 | 60",
                "CLOCK | 60",
                "SHORT_CLOCK | 1:60",
                "STOPWATCH | 1:00:00",
                "PARTS | 60",
                "PARTS | 30m 1h",
                "PARTS | RUN 3 m",
                "MINUTES | 12 s",
            })
    void whatIsInAnotherUnitIsRefused(Unit unit, String text) {
        assertThrows(UnreadableException.class, () -> Measure.of(text, unit));
    }

    @Test
    void unitsGoWithQuantitiesOfTheirKind() {
        assertTrue(Unit.FAHRENHEIT.goesWith(Quantity.CHAMBER_SETPOINT));
        assertTrue(Unit.OWN.goesWith(Quantity.JOB_TOTAL));
        assertTrue(Unit.ISO_8601.goesWith(Quantity.JOB_ELAPSED));
        assertFalse(Unit.PERCENT.goesWith(Quantity.BED_ACTUAL));
        assertFalse(Unit.SECONDS.goesWith(Quantity.JOB_PROGRESS));
        assertFalse(Unit.SHARE.goesWith(Quantity.JOB_DONE));
    }
}
