package dev.lampwright.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The offsets are those of the table in {@code wire.md}, SETUP and IN_FORCE. */
final class SetupKeysTest {
    private static final Setup SETUP = new Setup(
            10,
            "GRB",
            List.of(12_000, 12_000, 12_000),
            1000,
            0,
            3000,
            WhenSilent.BEACON,
            List.of(2000, 800),
            List.of(new Setup.Dimmer(1, 500, 0), new Setup.Dimmer(1, 300, 0)),
            List.of(new Setup.Run(0, 10)));

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0  | [strip] pixels",
                "2  | [strip] order",
                "3  | [strip] order",
                "7  | [strip] channel_mA",
                "15 | [strip] idle_mA",
                "17 | the supply of the [strip]",
                "18 | [controller] holdover_s",
                "20 | [controller] when_silent",
                "21 | the number of supplies, one for each volts in [supply] and [dimmers]",
                "22 | [supply] ceiling_mA",
                "24 | the sum of full_mA of the [dimmers] of one volts",
                "26 | the number of [dimmers], 2",
                "27 | volts of the light on channel 0 in [dimmers]",
                "33 | full_mA of the light on channel 1 in [dimmers]",
                "37 | [strip] outputs",
                "38 | [strip] outputs",
            })
    void namesTheKey(int offset, String key) {
        assertEquals(key, SetupKeys.key(SETUP, offset));
    }
}
