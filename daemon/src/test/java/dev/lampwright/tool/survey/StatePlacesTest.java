package dev.lampwright.tool.survey;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What each word, code and flag means, by what the printer did at the time. */
class StatePlacesTest {
    private static final String TEMPERATURES = "shop/rowan/heat";
    private static final int IN_THE_FAULT_S = 940;

    private final Survey survey = new Survey();

    /** A printer in plain English, plus what it reports about its state. */
    private Proposal surveyed(String topic, Function<Job.Moment, String> payload) {
        for (Job.Moment moment : Job.moments()) {
            long now = moment.second() * 1_000_000_000L;
            hear(
                    TEMPERATURES,
                    now,
                    "{\"bed\":{\"now\":%.1f,\"set\":%.0f},\"nozzle\":{\"now\":%.1f,\"set\":%.0f},\"progress\":%.3f}",
                    moment.value(Quantity.BED_ACTUAL),
                    moment.value(Quantity.BED_SETPOINT),
                    moment.value(Quantity.NOZZLE_ACTUAL),
                    moment.value(Quantity.NOZZLE_SETPOINT),
                    moment.value(Quantity.JOB_PROGRESS));
            hear(topic, now, "%s", payload.apply(moment));
        }
        return survey.proposal();
    }

    private void hear(String topic, long now, String format, Object... values) {
        survey.hear(topic, String.format(Locale.ROOT, format, values).getBytes(StandardCharsets.UTF_8), now);
    }

    private static Map<String, Optional<PrinterState>> states(StatePlace place) {
        return place.said().stream().collect(Collectors.toMap(Said::word, Said::state));
    }

    private static String own(Job.Moment moment, String held, String fault, int restFromSecond) {
        boolean rest = moment.state() == PrinterState.FAULT && moment.second() >= restFromSecond;
        return switch (moment.state()) {
            case IDLE -> "idle";
            case WARMING -> "heating";
            case HELD -> held;
            case FAULT -> rest ? held : fault;
            case DONE -> "done";
            default -> "printing";
        };
    }

    /** The only unknown word for a standstill is a pause if a known word for a fault was heard, and it came without that as well. */
    @Test
    void besideAKnownFaultTheOtherStandstillIsAPause() {
        Proposal proposal = surveyed("shop/rowan/word", moment -> own(moment, "zzz", "error", IN_THE_FAULT_S));
        assertEquals(
                Optional.of(PrinterState.HELD),
                states(proposal.statePlaces().get(0)).get("zzz"));
    }

    /** A word that only follows the fault may be the rest of what it says: a person must say it. */
    @Test
    void aWordThatOnlyFollowsAFaultStaysOpen() {
        Proposal proposal = surveyed(
                "shop/rowan/word",
                moment ->
                        moment.state() == PrinterState.HELD ? "printing" : own(moment, "zzz", "error", IN_THE_FAULT_S));
        assertEquals(Optional.empty(), states(proposal.statePlaces().get(0)).get("zzz"));
    }

    /** Two unknown words for a standstill: neither is certain. */
    @Test
    void withoutAKnownFaultNeitherIsBound() {
        Proposal proposal = surveyed("shop/rowan/word", moment -> own(moment, "zzz", "qqq", Integer.MAX_VALUE));
        assertEquals(Optional.empty(), states(proposal.statePlaces().get(0)).get("zzz"));
        assertEquals(Optional.empty(), states(proposal.statePlaces().get(0)).get("qqq"));
    }

    /** A pause that is shorter than a step of the job's number looks like printing; it is not bound to that. */
    @Test
    void aCoarseNumberDoesNotShowAShortPause() {
        for (Job.Moment moment : Job.moments()) {
            long now = moment.second() * 1_000_000_000L;
            hear(
                    TEMPERATURES,
                    now,
                    "{\"bed\":{\"now\":%.1f,\"set\":%.0f},\"nozzle\":{\"now\":%.1f,\"set\":%.0f},\"minutes_left\":%.0f}",
                    moment.value(Quantity.BED_ACTUAL),
                    moment.value(Quantity.BED_SETPOINT),
                    moment.value(Quantity.NOZZLE_ACTUAL),
                    moment.value(Quantity.NOZZLE_SETPOINT),
                    Math.ceil(moment.value(Quantity.JOB_LEFT) / 60));
            hear("shop/rowan/xyz", now, "%s", Printers.word(moment, "aba", "ebe", "ibi", "obo", "ubu", "yby"));
        }
        Map<String, Optional<PrinterState>> states =
                states(survey.proposal().statePlaces().get(0));
        assertEquals(Optional.of(PrinterState.PRINTING), states.get("ibi"));
        assertEquals(Optional.empty(), states.get("obo"));
        assertEquals(Optional.empty(), states.get("yby"));
    }

    /** The first word of a fault is not enough if a word that is not a fault begins with it as well. */
    @Test
    void aFaultIsNotToldByAWordThatOthersBeginWith() {
        assertEquals(
                Map.of(PrinterState.FAULT, List.of("machine error")),
                StateWords.of(List.of("machine xyz", "machine error")).known());
        assertEquals(
                Map.of(PrinterState.FAULT, List.of("error*")),
                StateWords.of(List.of("error 5", "error 7")).known());
    }

    /** A separate number for faults counts first, so a word for any standstill is bound to the pause. */
    @Test
    void aWordForPauseAndFaultIsThePauseIfACodeShowsTheFault() {
        Proposal proposal = surveyed(
                "shop/rowan/job",
                moment -> "{\"xyz\":\"" + Printers.word(moment, "aba", "ebe", "ibi", "obo", "ubu", "obo")
                        + "\",\"error_code\":" + (moment.state() == PrinterState.FAULT ? 7 : 0) + "}");
        assertEquals(
                Optional.of(PrinterState.HELD),
                states(proposal.statePlaces().get(0)).get("obo"));
        assertEquals(PrinterState.FAULT, proposal.conditions().get(0).state());
    }

    /** None of its words is in a list. What is certain is bound; a pause and a fault look alike, and a person has to decide. */
    @Test
    void wordsOfAnyLanguage() {
        Proposal proposal =
                surveyed("shop/rowan/xyz", moment -> Printers.word(moment, "aba", "ebe", "ibi", "obo", "ubu", "yby"));
        StatePlace place = proposal.statePlaces().get(0);
        assertTrue(place.bound());
        assertEquals(
                Map.of(
                        "aba", Optional.of(PrinterState.IDLE),
                        "ebe", Optional.of(PrinterState.WARMING),
                        "ibi", Optional.of(PrinterState.PRINTING),
                        "obo", Optional.empty(),
                        "ubu", Optional.of(PrinterState.DONE),
                        "yby", Optional.empty()),
                states(place));
        assertEquals(
                List.of("obo", "yby"), place.open().stream().map(Said::word).toList());
        Said pause = place.open().get(0);
        assertTrue(pause.isStandstill());
        assertAtLeast(30, pause.seconds(Doing.STANDING));
        assertEquals(1, pause.times());
        String file = ProposedConfig.printerSections(proposal);
        assertTrue(file.contains("# [\"obo\"]") || file.contains("# \"obo\" is not bound to a state."), file);
        assertTrue(file.contains("a pause or a fault: put it into held or fault"), file);
    }

    /** A word that contradicts the readings is not believed. */
    @Test
    void behaviourCountsMoreThanAWord() {
        Proposal proposal = surveyed(
                "shop/rowan/state",
                moment -> Printers.word(
                        moment, "off duty", "no error, heats", "error free: ready", "paused", "over", "jam"));
        Map<String, Optional<PrinterState>> states =
                states(proposal.statePlaces().get(0));
        assertEquals(Optional.of(PrinterState.WARMING), states.get("no error, heats"));
        assertEquals(Optional.of(PrinterState.PRINTING), states.get("error free: ready"));
        assertEquals(Optional.of(PrinterState.FAULT), states.get("jam"));
    }

    @Test
    void codes() {
        Proposal proposal = surveyed("shop/rowan/xyz", moment -> Printers.word(moment, "0", "1", "2", "3", "4", "9"));
        Found state = proposal.found(Role.STATE).orElseThrow();
        assertEquals(
                Map.of(
                        "0", PrinterState.IDLE,
                        "1", PrinterState.WARMING,
                        "2", PrinterState.PRINTING,
                        "4", PrinterState.DONE),
                state.meanings());
    }

    private static boolean is(Job.Moment moment, PrinterState... states) {
        return Set.of(states).contains(moment.state());
    }

    @Test
    void flagsBecomeConditions() {
        Proposal proposal = surveyed(
                "shop/rowan/flags",
                moment -> String.format(
                        "{\"printing\":%s,\"paused\":%s,\"error\":%s}",
                        is(moment, PrinterState.PRINTING, PrinterState.HELD, PrinterState.FAULT),
                        is(moment, PrinterState.HELD),
                        is(moment, PrinterState.FAULT)));
        assertEquals(
                List.of(PrinterState.FAULT, PrinterState.HELD, PrinterState.PRINTING),
                proposal.conditions().stream().map(FoundCondition::state).toList());
    }

    /** A text or a code named as a fault that is empty or constant while the job runs. */
    @ParameterizedTest
    @ValueSource(strings = {"|jam at 3", "0|17", "none|tip blocked", "OK|E17"})
    void aFaultThatIsToldByTextOrCode(String texts) {
        String fine = texts.split("\\|", -1)[0];
        String wrong = texts.split("\\|", -1)[1];
        Proposal proposal = surveyed("shop/rowan/error", moment -> is(moment, PrinterState.FAULT) ? wrong : fine);
        FoundCondition fault = proposal.conditions().get(0);
        assertEquals(PrinterState.FAULT, fault.state());
        assertEquals(fine.isEmpty() ? List.of() : List.of(fine), fault.not());
    }

    /** A count of faults, the last old one, and a text that comes while the job runs show no fault. */
    @ParameterizedTest
    @ValueSource(strings = {"shop/rowan/error_count", "shop/rowan/last_error", "shop/rowan/error"})
    void whatShowsNoFault(String topic) {
        Proposal proposal =
                surveyed(topic, moment -> moment.second() < 400 ? "" : "text " + (char) ('a' + moment.second() / 100));
        assertEquals(List.of(), proposal.conditions());
    }

    /** People name topics after houses and rooms. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "farm/alder/status",
                "windmill/alder/status",
                "hostel/alder/status",
                "home/bedroom/alder",
                "garage/printer/status",
                "weather/alder"
            })
    void aPlaceSaysNothingOfWhatStandsThere(String topic) {
        for (int second = 0; second < 16; second++) {
            hear(
                    topic,
                    second * 1_000_000_000L,
                    "{\"state\":\"idle\",\"bed\":{\"actual\":22.%d,\"target\":0},\"nozzle\":{\"actual\":21.%d,\"target\":0},\"progress\":0}",
                    second % 4,
                    second % 3);
        }
        for (Role role : List.of(Role.BED_ACTUAL, Role.NOZZLE_SETPOINT, Role.PROGRESS, Role.STATE)) {
            assertTrue(survey.proposal().found(role).isPresent(), role.word());
        }
    }
}
