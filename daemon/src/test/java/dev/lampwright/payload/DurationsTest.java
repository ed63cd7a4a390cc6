package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** ISO 8601-1:2019, section 5.5.2, from memory: the designators, and a decimal fraction, with comma or point, in the last part only. */
class DurationsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "PT0S | 0",
                "PT36H | 129600",
                "P1DT12H | 129600",
                "P1D | 86400",
                "P2W | 1209600",
                "PT1H30M | 5400",
                "PT90M | 5400",
                "PT1M30.5S | 90.5",
                "PT0,5H | 1800",
                "P0.5D | 43200",
                "P3DT4H5M6S | 273906",
                "pt5m | 300",
            })
    void durations(String text, double seconds) throws UnreadableException {
        assertEquals(seconds, Durations.iso(text), 1e-9);
    }

    /** Compares with the JDK's reader of the same standard. */
    @ParameterizedTest
    @ValueSource(strings = {"PT20.345S", "PT15M", "PT10H", "P2D", "P2DT3H4M", "PT0.000001S"})
    void readsLikeTheJdk(String text) throws UnreadableException {
        assertEquals(Duration.parse(text).toNanos() * 1e-9, Durations.iso(text), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "P",
                "PT",
                "P1DT",
                "1H",
                "T1H",
                "P1H",
                "PT1D",
                "P1Y",
                "P1M",
                "P1Y2M3DT4H",
                "PT1.5H30M",
                "PT-5M",
                "-PT5M",
                "P1W2D",
                "PT1M1H",
                "PT1H ",
                "PT1e3S",
                "PT11111111111111111111111111111111111111111S"
            })
    void refused(String text) {
        assertThrows(UnreadableException.class, () -> Durations.iso(text));
    }

    @ParameterizedTest
    @CsvSource({"0:00:00, 0", "1:30:00, 5400", "01:02:03, 3723", "100:0:0, 360000", "0:00:01.5, 1.5"})
    void clock(String text, double seconds) throws UnreadableException {
        assertEquals(seconds, Durations.clock(text), 1e-9);
    }

    /** Words and abbreviations from memory. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1h 30m | 5400",
                "12 min 05 s | 725",
                "2 days 3 hours | 183600",
                "12хв05с | 725",
                "1 год 2 хв | 3720",
                "12 dk 5 sn | 725",
                "12 perc 5 mp | 725",
                "1 Std. 12 Min. | 4320",
                "1小时2分 | 3720",
                "12 phút 5 giây | 725"
            })
    void parts(String text, double seconds) throws UnreadableException {
        assertEquals(seconds, Durations.parts(text), 1e-9);
    }

    /** What may as well be a weight, a count or a price is none. */
    @ParameterizedTest
    @ValueSource(strings = {"", "12", "12 g", "12 p", "12 st", "12 kg", "12 mm", "5 s 3 min"})
    void noParts(String text) {
        assertThrows(UnreadableException.class, () -> Durations.parts(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "1:30", "1:60:00", "1:00:60", "-1:00:00", "1:00:00 PM", "::"})
    void noClock(String text) {
        assertThrows(UnreadableException.class, () -> Durations.clock(text));
    }
}
