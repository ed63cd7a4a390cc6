package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which units a survey assumes for values. The survey's own rules; common practice, no source. */
class UnitsTest {
    private static final long SECOND = 1_000_000_000L;
    private static final int SECONDS = 120;

    private final Survey survey = new Survey();

    private void hear(int second, String topic, String format, Object... values) {
        String payload = String.format(Locale.ROOT, format, values);
        survey.hear(topic, payload.getBytes(StandardCharsets.UTF_8), second * SECOND);
    }

    private void heat(double bedFrom, double bedTo, double nozzleFrom, double nozzleTo) {
        for (int i = 0; i <= SECONDS; i++) {
            double share = (double) i / SECONDS;
            hear(i, "rowan/bed_temp", "%.1f", bedFrom + share * (bedTo - bedFrom));
            hear(i, "rowan/nozzle_temp", "%.1f", nozzleFrom + share * (nozzleTo - nozzleFrom));
        }
    }

    private Found found(Role role) {
        return survey.proposal().found(role).orElseThrow();
    }

    /** A bed of 140 °F and a nozzle of 372.5 °F are 60 °C and 189 °C. */
    @Test
    void aBedAndANozzleThatAreBothTooHotForCelsiusAreInFahrenheit() {
        heat(98, 140, 99, 372.5);
        for (Role role : List.of(Role.BED_ACTUAL, Role.NOZZLE_ACTUAL)) {
            assertEquals(Unit.FAHRENHEIT, found(role).unit());
            assertEquals(1, found(role).doubts().size());
        }
        String doubt = "in doubt: " + found(Role.BED_ACTUAL).doubts().get(0);
        assertTrue(SurveyTable.reasons(survey.proposal()).contains("    " + doubt));
        assertTrue(ProposedConfig.printerSections(survey.proposal())
                .contains("\n# " + doubt + "\nbed.actual_C = { topic = \"rowan/bed_temp\", unit = \"°F\" }\n"));
    }

    /** A printer that was cold in °C; a hot nozzle over a bed that is not hot; and an ordinary printer. */
    @ParameterizedTest
    @CsvSource({"22, 140, 22, 372.5", "60, 100, 60, 340", "22, 60, 22, 215"})
    void otherTemperaturesAreInCelsius(double bedFrom, double bedTo, double nozzleFrom, double nozzleTo) {
        heat(bedFrom, bedTo, nozzleFrom, nozzleTo);
        assertEquals(Unit.OWN, found(Role.BED_ACTUAL).unit());
        assertEquals(Unit.OWN, found(Role.NOZZLE_ACTUAL).unit());
        assertEquals(List.of(), found(Role.NOZZLE_ACTUAL).doubts());
    }

    @ParameterizedTest
    @CsvSource({"F, FAHRENHEIT", "°F, FAHRENHEIT", "Fahrenheit, FAHRENHEIT", "K, KELVIN", "C, CELSIUS", "mm, OWN"})
    void aUnitThatStandsBesideCounts(String word, Unit unit) {
        hear(0, "rowan/unit", word);
        double shift = unit == Unit.KELVIN ? 273.15 : 0;
        heat(72 + shift, 104 + shift, 72 + shift, 180 + shift);
        assertEquals(unit, found(Role.BED_ACTUAL).unit());
        assertEquals(unit, found(Role.NOZZLE_ACTUAL).unit());
        assertEquals(List.of(), found(Role.BED_ACTUAL).doubts());
    }

    @Test
    void aUnitThatStandsElsewhereDoesNot() {
        hear(0, "house/weather/unit", "F");
        hear(0, "unit", "F");
        hear(0, "rowan/fan", "{\"unit\":\"F\"}");
        heat(22, 60, 22, 215);
        assertEquals(Unit.OWN, found(Role.BED_ACTUAL).unit());
    }

    @Test
    void whatIsNoTemperatureSaysNothingOfTheirUnit() {
        hear(0, "rowan/nozzle/flow/target", "450");
        heat(22, 60, 22, 215);
        assertEquals(Unit.OWN, found(Role.NOZZLE_ACTUAL).unit());
    }

    @Test
    void theNearestUnitCounts() {
        for (int i = 0; i <= SECONDS; i++) {
            hear(
                    i,
                    "rowan",
                    "{\"unit\":\"C\",\"bed\":{\"temp\":%d,\"unit\":\"F\"},\"nozzle\":{\"temp\":%d}}",
                    90 + i / 4,
                    60 + i);
        }
        assertEquals(Unit.FAHRENHEIT, found(Role.BED_ACTUAL).unit());
        assertEquals(Unit.CELSIUS, found(Role.NOZZLE_ACTUAL).unit());
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "0.0"})
    void percentIsInDoubtWhileThePrinterRests(String progress) {
        for (int i = 0; i <= SECONDS; i++) {
            hear(i, "rowan/job", "{\"progress\":" + progress + "}");
            hear(i, "rowan/plate", "{\"now\":22.5,\"set\":0}");
        }
        assertEquals(Unit.PERCENT, found(Role.PROGRESS).unit());
        String doubt = "in doubt: percent is a guess, since nothing but 0 was heard; ";
        String file = ProposedConfig.printerSections(survey.proposal());
        assertTrue(file.lines().anyMatch(line -> line.startsWith("# " + doubt)), file);
        List<String> table = SurveyTable.reasons(survey.proposal());
        assertTrue(table.stream().anyMatch(line -> line.startsWith("    " + doubt)), table.toString());
    }

    @ParameterizedTest
    @CsvSource({"1, ''", "0.01, ''", "0, ' %'"})
    void thereIsNoDoubtOnceItMovesOrTheUnitStandsThere(double step, String unit) {
        for (int i = 0; i <= 60; i++) {
            hear(i, "rowan/job", "{\"progress\":\"%.2f%s\"}", step * i, unit);
        }
        assertEquals(List.of(), found(Role.PROGRESS).doubts());
        assertFalse(ProposedConfig.printerSections(survey.proposal()).contains("in doubt"));
    }

    /** 22nd CGPM (2003), resolution 10: the decimal marker is the point or the comma; from memory. */
    @Test
    void aDecimalCommaIsNoSeparator() {
        for (int i = 0; i <= SECONDS; i++) {
            hear(
                    i,
                    "rowan/plate/now",
                    "%s",
                    String.format(Locale.ROOT, "%.1f", 22 + i / 4.0).replace('.', ','));
            hear(i, "rowan/plate/set", "60,0");
        }
        assertEquals(
                new Source("rowan/plate/now", PayloadPath.BARE),
                found(Role.BED_ACTUAL).source());
        assertEquals(
                new Source("rowan/plate/set", PayloadPath.BARE),
                found(Role.BED_SETPOINT).source());
        Proposal.Row row = survey.proposal().rows().get(0);
        assertEquals("22 to 52", row.range());
        assertEquals("52,0", row.last());
    }
}
