package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Summer time as the IANA time zone database has it. In the European Union clocks go forward on the last Sunday in March and back on the
 * last in October, both at 01:00 UTC (Directive 2000/84/EC): in 2026 on 29 March and on 25 October.
 */
class QuietHoursTest {
    @ParameterizedTest
    @CsvSource({
        // over midnight, winter: UTC+1
        "22:30, 07:00, 2026-01-10T21:29:59Z, false",
        "22:30, 07:00, 2026-01-10T21:30:00Z, true",
        "22:30, 07:00, 2026-01-11T05:59:59Z, true",
        "22:30, 07:00, 2026-01-11T06:00:00Z, false",
        // over midnight, summer: UTC+2
        "22:30, 07:00, 2026-07-10T20:29:59Z, false",
        "22:30, 07:00, 2026-07-10T20:30:00Z, true",
        "22:30, 07:00, 2026-07-11T04:59:59Z, true",
        "22:30, 07:00, 2026-07-11T05:00:00Z, false",
        // within one day
        "13:00, 14:00, 2026-01-10T12:00:00Z, true",
        "13:00, 14:00, 2026-01-10T13:00:00Z, false",
        // the night when clocks go forward is an hour shorter
        "22:30, 07:00, 2026-03-28T21:30:00Z, true",
        "22:30, 07:00, 2026-03-29T04:59:59Z, true",
        "22:30, 07:00, 2026-03-29T05:00:00Z, false",
        // 02:30 is left out: the night begins, or ends, when clocks go from 02:00 to 03:00
        "02:30, 07:00, 2026-03-29T00:59:59Z, false",
        "02:30, 07:00, 2026-03-29T01:00:00Z, true",
        "22:00, 02:30, 2026-03-29T00:59:59Z, true",
        "22:00, 02:30, 2026-03-29T01:00:00Z, false",
        // 02:30 comes twice: it begins with the first and does not stop between the two
        "02:30, 07:00, 2026-10-25T00:29:59Z, false",
        "02:30, 07:00, 2026-10-25T00:30:00Z, true",
        "02:30, 07:00, 2026-10-25T01:10:00Z, true",
        "02:30, 07:00, 2026-10-25T05:59:59Z, true",
        "02:30, 07:00, 2026-10-25T06:00:00Z, false",
        // and it ends with the second
        "22:00, 02:30, 2026-10-25T00:30:00Z, true",
        "22:00, 02:30, 2026-10-25T01:29:59Z, true",
        "22:00, 02:30, 2026-10-25T01:30:00Z, false"
    })
    void byTheClockOnTheWall(LocalTime from, LocalTime to, Instant now, boolean night) {
        QuietHours hours = new QuietHours(from, to, ZoneId.of("Europe/Prague"), 0.1);
        assertEquals(night, hours.at(now));
    }
}
