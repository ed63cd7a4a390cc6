package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.payload.Quantity;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Which numbers are the job's when no name says so, after heat-up and first layers. */
class JobGrowthTest {
    private static final int TO_THE_FIRST_LAYERS = 400;

    /** A printer whose heaters have English names, plus the values to be judged. */
    private static Proposal surveyed(Function<Job.Moment, String> fields) {
        Survey survey = new Survey();
        for (Job.Moment moment : Job.moments().subList(0, TO_THE_FIRST_LAYERS)) {
            String payload = String.format(
                    Locale.ROOT,
                    "{\"bed\":{\"now\":%.1f,\"set\":%.0f},\"nozzle\":{\"now\":%.1f,\"set\":%.0f},%s}",
                    moment.value(Quantity.BED_ACTUAL),
                    moment.value(Quantity.BED_SETPOINT),
                    moment.value(Quantity.NOZZLE_ACTUAL),
                    moment.value(Quantity.NOZZLE_SETPOINT),
                    fields.apply(moment));
            survey.hear("rowan", payload.getBytes(StandardCharsets.UTF_8), moment.second() * 1_000_000_000L);
        }
        return survey.proposal();
    }

    private static String field(String name, String format, double value) {
        return "\"" + name + "\":" + String.format(Locale.ROOT, format, value);
    }

    private static Optional<String> place(Proposal proposal, Role role) {
        return proposal.found(role).map(found -> found.source().place());
    }

    private static String share(Job.Moment moment, double of) {
        return field("abc", "%.1f", of * moment.value(Quantity.JOB_PROGRESS));
    }

    @Test
    void theOnlyNumberThatBeginsWithTheJobIsItsProgressAndInDoubt() {
        Found progress =
                surveyed(moment -> share(moment, 100)).found(Role.PROGRESS).orElseThrow();
        assertEquals("/abc", progress.source().place());
        assertEquals(1, progress.doubts().size());
        assertEquals("percent", progress.unit().word());
    }

    /** A height in mm grows with the job as well. */
    @Test
    void ofTwoNoneIsTaken() {
        Proposal proposal = surveyed(
                moment -> share(moment, 100) + "," + field("def", "%.1f", 0.2 * moment.value(Quantity.JOB_DONE)));
        assertEquals(Optional.empty(), place(proposal, Role.PROGRESS));
    }

    @Test
    void whatANameSaysIsOfAnotherThingIsNotTaken() {
        Proposal proposal = surveyed(moment -> field("z", "%.1f", 0.2 * moment.value(Quantity.JOB_DONE)));
        assertEquals(Optional.empty(), place(proposal, Role.PROGRESS));
    }

    /** An hour meter, and one that counts what is heated, run before the heaters are there. */
    @Test
    void whatRisesDuringTheHeatUpIsNotTaken() {
        Proposal proposal = surveyed(moment -> field("abc", "%.1f", Math.max(0, moment.second() - 25) / 7.0));
        assertEquals(Optional.empty(), place(proposal, Role.PROGRESS));
    }

    @Test
    void aCountHasItsTotalBesideIt() {
        Proposal proposal = surveyed(moment -> field("ply", "%.0f", moment.value(Quantity.JOB_DONE)) + ","
                + field("plys", "%.0f", moment.value(Quantity.JOB_TOTAL)) + ","
                + share(moment, 100));
        assertEquals(
                List.of(Optional.of("/ply"), Optional.of("/plys"), Optional.of("/abc")),
                List.of(place(proposal, Role.DONE), place(proposal, Role.TOTAL), place(proposal, Role.PROGRESS)));
    }

    /** As in a language without a list: the total is called by the same word in the plural, and another before it. */
    @Test
    void aTotalHasTheCountsWordInItsName() {
        Proposal proposal = surveyed(moment -> field("слој", "%.0f", moment.value(Quantity.JOB_DONE)) + ","
                + field("свих_слојева", "%.0f", moment.value(Quantity.JOB_TOTAL)));
        assertEquals(
                List.of(Optional.of("/слој"), Optional.of("/свих_слојева")),
                List.of(place(proposal, Role.DONE), place(proposal, Role.TOTAL)));
    }

    @Test
    void anotherWordIsNotATotals() {
        Proposal proposal = surveyed(moment -> field("слој", "%.0f", moment.value(Quantity.JOB_DONE)) + ","
                + field("свих_ствари", "%.0f", moment.value(Quantity.JOB_TOTAL)));
        assertEquals(Optional.empty(), place(proposal, Role.DONE));
    }

    /** 5 of 1000 at the first layers looks like percent; the name says otherwise. */
    @Test
    void aNameSaysPermille() {
        Found progress = surveyed(moment -> field("permille", "%.0f", 1000 * moment.value(Quantity.JOB_PROGRESS)))
                .found(Role.PROGRESS)
                .orElseThrow();
        assertEquals(0.001, progress.scale());
    }

    /** 64 while 10 of 168 layers are done: below 100, but not percent. */
    @Test
    void aCountShowsTheScaleOfTheProgress() {
        Found progress = surveyed(moment -> field("layer", "%.0f", moment.value(Quantity.JOB_DONE)) + ","
                        + field("layers", "%.0f", 2 * moment.value(Quantity.JOB_TOTAL)) + ","
                        + field("progress", "%.0f", 500 * moment.value(Quantity.JOB_PROGRESS)))
                .found(Role.PROGRESS)
                .orElseThrow();
        assertEquals(0.001, progress.scale());
    }
}
