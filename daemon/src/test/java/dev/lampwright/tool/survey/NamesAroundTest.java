package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.CsvField;
import dev.lampwright.payload.Quantity;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Names that are not beside their value: in a table's first line, and in the beginning of all topics. */
class NamesAroundTest {
    private final Survey survey = new Survey();

    private void hear(String topic, int second, String format, Object... values) {
        survey.hear(
                topic,
                String.format(Locale.ROOT, format, values).getBytes(StandardCharsets.UTF_8),
                second * 1_000_000_000L);
    }

    private Optional<String> place(Role role) {
        return survey.proposal().found(role).map(found -> found.source().place());
    }

    private Optional<Integer> field(Role role) {
        return survey.proposal()
                .found(role)
                .map(found -> ((CsvField) found.source().cuts().get(0)).number());
    }

    /** The fields are in no usual order, and two of the numbers rise with the job. */
    private void table(String head, String row, String names) {
        for (Job.Moment moment : Job.moments()) {
            if (moment.second() == 0) {
                hear(head, 0, "%s", names);
            }
            hear(
                    row,
                    moment.second(),
                    "%.1f;%.2f;%.1f;%.0f;%.1f;%.0f;%s",
                    moment.value(Quantity.CHAMBER_ACTUAL),
                    0.2 * moment.value(Quantity.JOB_DONE),
                    moment.value(Quantity.BED_ACTUAL),
                    moment.value(Quantity.BED_SETPOINT),
                    100 * moment.value(Quantity.JOB_PROGRESS),
                    moment.value(Quantity.JOB_DONE),
                    moment.state().word());
        }
    }

    @Test
    void theFirstLineOfATableNamesItsFields() {
        table("shop/rowan/head", "shop/rowan/row", "enclosure_c;height_mm;bed_c;bed_target_c;percent;layer;status");
        assertEquals(
                List.of(Optional.of(3), Optional.of(1), Optional.of(5), Optional.of(6)),
                List.of(field(Role.BED_ACTUAL), field(Role.CHAMBER_ACTUAL), field(Role.PROGRESS), field(Role.DONE)));
    }

    @Test
    void itMayComeOnTheSameTopic() {
        table("shop/rowan", "shop/rowan", "enclosure_c;height_mm;bed_c;bed_target_c;percent;layer;status");
        assertEquals(Optional.of(6), field(Role.DONE));
    }

    @Test
    void aLineWithAnotherNumberOfNamesNamesNothing() {
        table("shop/rowan/head", "shop/rowan/row", "height_mm;bed_c;bed_target_c;percent;layer;status");
        assertEquals(Optional.empty(), field(Role.DONE));
    }

    @Test
    void aHeadElsewhereNamesNothing() {
        table("shop/birch/head", "shop/rowan/row", "enclosure_c;height_mm;bed_c;bed_target_c;percent;layer;status");
        assertEquals(Optional.empty(), field(Role.DONE));
    }

    /** Without it, both heaters would be beds: the names say nothing, and the hotter one is the nozzle. */
    @Test
    void aWordThatAllHeatersShareSaysNothing() {
        for (Job.Moment moment : Job.moments()) {
            hear(
                    "table/rowan/a",
                    moment.second(),
                    "{\"alder\":{\"now\":%.1f,\"set\":%.0f},\"birch\":{\"now\":%.1f,\"set\":%.0f}}",
                    moment.value(Quantity.NOZZLE_ACTUAL),
                    moment.value(Quantity.NOZZLE_SETPOINT),
                    moment.value(Quantity.BED_ACTUAL),
                    moment.value(Quantity.BED_SETPOINT));
            hear("table/rowan/b", moment.second(), "%s", moment.state().word());
        }
        assertEquals(
                List.of(Optional.of("/alder/now"), Optional.of("/birch/now")),
                List.of(place(Role.NOZZLE_ACTUAL), place(Role.BED_ACTUAL)));
    }

    /** A bed's own topic names it, even if it says in words what it does. */
    @Test
    void aWordForOneHeaterCounts() {
        for (Job.Moment moment : Job.moments()) {
            hear("rowan/bed/now", moment.second(), "%.1f", moment.value(Quantity.BED_ACTUAL));
            hear("rowan/bed/set", moment.second(), "%.0f", moment.value(Quantity.BED_SETPOINT));
            hear("rowan/bed/does", moment.second(), "%s", moment.value(Quantity.BED_SETPOINT) > 0 ? "heats" : "rests");
            hear("rowan/nozzle/now", moment.second(), "%.1f", moment.value(Quantity.NOZZLE_ACTUAL));
            hear("rowan/nozzle/set", moment.second(), "%.0f", moment.value(Quantity.NOZZLE_SETPOINT));
        }
        Found bed = survey.proposal().found(Role.BED_ACTUAL).orElseThrow();
        assertEquals("rowan/bed/now", bed.source().topicFilter());
        assertEquals(
                "“bed” speaks of the bed, “now” of what is measured",
                bed.reasons().get(0));
    }

    /** At first the reading, in steps of 5 K, looks like a second target, so that “bed” might be the name of a whole printer. */
    @Test
    void anEarlierProposalDoesNotAffectALaterOne() {
        boolean wasMissing = false;
        for (Job.Moment moment : Job.moments()) {
            hear("rowan/bed/now", moment.second(), "%d", 5 * Math.round(moment.value(Quantity.BED_ACTUAL) / 5));
            hear("rowan/bed/set", moment.second(), "%.0f", moment.value(Quantity.BED_SETPOINT));
            hear("rowan/bed/does", moment.second(), "%s", moment.value(Quantity.BED_SETPOINT) > 0 ? "heats" : "rests");
            wasMissing |= place(Role.BED_ACTUAL).isEmpty();
        }
        assertTrue(wasMissing);
        assertEquals(
                Optional.of("rowan/bed/now"),
                survey.proposal()
                        .found(Role.BED_ACTUAL)
                        .map(found -> found.source().topicFilter()));
    }
}
