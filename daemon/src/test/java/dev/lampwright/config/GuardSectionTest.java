package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.guard.GuardSettings;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuardSectionTest {
    private static final String REST = """
            broker.url = "mqtt://alder"
            printer.readings.job.progress.topic = "shop/alder/job"
            controller.port = "/dev/ttyACM0"
            strip.pixels = 30
            zones.glow = "20-29"
            dimmers.work = { channel = 0, volts = 24, full_mA = 800 }
            """;

    private static final List<Double> VOLTS = List.of(5.0, 24.0);

    @Test
    void withoutItThereAreTheUsualSettings() throws ConfigException {
        assertEquals(new GuardSettings(Optional.empty(), 2, false, VOLTS), read(""));
    }

    @Test
    void everyKeyIsRead() throws ConfigException {
        assertEquals(new GuardSettings(Optional.of(List.of("work", "glow", "job")), 3.5, true, VOLTS), read("""
                        [guard]
                        dim_order = ["work", "glow", "job"]
                        rise_s = 3.5
                        allow_flashing_that_can_cause_seizures = true
                        """));
        assertEquals(
                Optional.of(List.of("glow")), read("guard.dim_order = \"glow\"").dimOrder());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "guard.dim_order = [\"glwo\"]|guard.dim_order: is \"glwo\", which is not a known zone or dimmer; did you mean \"glow\"?",
                "guard.dim_order = [\"glow\", \"glow\"]|guard.dim_order: has a name twice; name each zone and each dimmer once"
                        + " at most",
                "guard.rise_s = 0|guard.rise_s: is 0; give a number from 0.1 to 60",
                "guard.allow_flashing_that_can_cause_seizures = 1|guard.allow_flashing_that_can_cause_seizures: is 1; give true"
                        + " or false",
                "guard.ceiling = false|guard.ceiling: is not known; "
            })
    void mistakesAreTold(String line, String complaint) {
        ConfigException wrong = assertThrows(ConfigException.class, () -> read(line));
        assertTrue(wrong.getMessage().startsWith("t.toml:7: " + complaint), wrong.getMessage());
    }

    private static GuardSettings read(String guard) throws ConfigException {
        return ConfigFile.read(REST + guard, "t.toml").light().guard();
    }
}
