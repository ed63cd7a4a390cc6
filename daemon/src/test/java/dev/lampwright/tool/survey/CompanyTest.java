package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.broker.Broker;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.desk.AskedFor;
import dev.lampwright.desk.Report;
import dev.lampwright.desk.Signature;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who else may publish through a broker. The survey's own rules; common practice, no source. */
class CompanyTest {
    private static final long SECOND = 1_000_000_000L;
    private static final int FIRST_LAYERS = 400;
    private static final Broker BROKER =
            new Broker(URI.create("mqtt://127.0.0.1:1883"), Optional.empty(), Optional.empty(), Optional.empty());

    private static final Signature SIGNATURE = new Signature("shed", "alder", "0f12ab");

    private final Survey survey = new Survey();
    private long now;

    private void hear(String topic, String format, Object... values) {
        survey.hear(topic, String.format(Locale.ROOT, format, values).getBytes(StandardCharsets.UTF_8), now);
    }

    /** What a daemon publishes while its printer rests, in the daemon's format. */
    private static String status(double bed) {
        return new Report(
                        "1.2",
                        List.of(new Report.Printer(PrinterState.IDLE, "", AlarmState.NORMAL, "")),
                        new Report.Light("idle", 0.5, false, new StripCurrent(320, 1500)),
                        new Report.Lines("lit", "", "connected"),
                        60,
                        Map.of("bed.actual_C", bed, "nozzle.actual_C", bed, "job.progress", 0.0),
                        Map.of(),
                        AskedFor.NOTHING)
                .json(SIGNATURE, new Report.Sight(Instant.EPOCH, "", ""));
    }

    private void tellOfOneself(String prefix) {
        for (int i = 0; i < 30; i++) {
            now = i * SECOND;
            hear(prefix + "/ask/brightness", "%.1f", 0.1 * (i % 10));
            hear(prefix + "/answer", "{\"ask\":\"brightness\",\"done\":true,\"now\":\"brightness 0.5\"}");
            hear(prefix + "/status", "%s", status(22 + 0.1 * i));
        }
    }

    private void print(String place) {
        for (Job.Moment moment : Job.moments().subList(0, FIRST_LAYERS)) {
            now = moment.second() * SECOND;
            print(place, moment);
        }
    }

    private void print(String place, Job.Moment moment) {
        hear(place + "/bed/now", "%.1f", moment.value(Quantity.BED_ACTUAL));
        hear(place + "/bed/set", "%.0f", moment.value(Quantity.BED_SETPOINT));
        hear(place + "/nozzle/now", "%.1f", moment.value(Quantity.NOZZLE_ACTUAL));
        hear(place + "/nozzle/set", "%.0f", moment.value(Quantity.NOZZLE_SETPOINT));
        hear(place + "/state", "%s", moment.state().word());
    }

    @ParameterizedTest
    @ValueSource(strings = {"lampwright", "shop/alder", "a/b/bed"})
    void aLampwrightIsNoPrinter(String prefix) {
        tellOfOneself(prefix);
        Proposal proposal = survey.proposal();
        assertFalse(ProposedConfig.isEnough(proposal));
        assertEquals(List.of(), proposal.rows());
        assertEquals(90, proposal.messages());
        List<String> table = SurveyTable.values(proposal, 10);
        assertEquals(
                prefix + "/status: another lampwright reports its status there; left out, as are " + prefix
                        + "/answer and " + prefix + "/ask/…",
                table.get(table.size() - 1));
    }

    @Test
    void aPrinterBesideALampwrightIsFound() {
        tellOfOneself("shop/alder");
        print("shop/alder");
        Proposal proposal = survey.proposal();
        assertEquals(
                "shop/alder/bed/now",
                proposal.found(Role.BED_ACTUAL).orElseThrow().source().topicFilter());
        assertEquals(List.of("shop/alder"), proposal.company().lampwrights());
        assertTrue(
                proposal.rows().stream().noneMatch(row -> row.topic().startsWith("shop/alder/ask")),
                "what it is asked is left out");
    }

    @ParameterizedTest
    @ValueSource(strings = {"lost", "stopped"})
    void aLampwrightThatIsGoneIsKnownToo(String why) {
        hear("lampwright/status", "%s", Report.gone("1.2", why, SIGNATURE));
        assertEquals(List.of("lampwright"), survey.proposal().company().lampwrights());
        assertEquals(List.of(), survey.proposal().rows());
    }

    @Test
    void theStatusOfAPrinterIsNotALampwrights() {
        hear("shop/alder/status", "{\"online\":true,\"version\":\"3\",\"state\":\"idle\",\"bed\":{\"actual\":22}}");
        hear("shop/birch/status", "{\"online\":false,\"version\":\"3\",\"why\":\"door open\"}");
        assertEquals(List.of(), survey.proposal().company().lampwrights());
        assertEquals(7, survey.proposal().rows().size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"%s", "shop/%s", "shop/%s/heat", "hall/a/%s"})
    void aSecondPrinterIsNamed(String place) {
        for (Job.Moment moment : Job.moments().subList(0, FIRST_LAYERS)) {
            now = moment.second() * SECOND;
            List.of("p1", "p2", "p3").forEach(name -> print(String.format(place, name), moment));
        }
        Proposal proposal = survey.proposal();
        String bound = proposal.found(Role.BED_ACTUAL).orElseThrow().source().topicFilter();
        List<String> others = List.of("p1", "p2", "p3").stream()
                .filter(name -> !bound.contains(name))
                .map(name -> String.format(place, name).replace("/heat", "") + "/#")
                .toList();
        assertEquals(others, proposal.company().places().stream().sorted().toList());
        for (String other : others) {
            String option = "--topics '" + other + "'";
            assertTrue(
                    SurveyTable.reasons(proposal).stream().anyMatch(line -> line.contains(option)),
                    SurveyTable.reasons(proposal).toString());
            assertTrue(
                    ProposedConfig.whole(proposal, BROKER)
                            .lines()
                            .anyMatch(line -> line.startsWith("# to choose another: ") && line.contains(option)),
                    ProposedConfig.whole(proposal, BROKER));
        }
    }

    @Test
    void ofVeryManyPrintersSomeAreNamed() {
        for (Job.Moment moment : Job.moments().subList(0, FIRST_LAYERS / 4)) {
            now = moment.second() * SECOND;
            for (int i = 0; i < LookAlikes.MOST + 4; i++) {
                print("shop/p" + i, moment);
            }
        }
        Proposal proposal = survey.proposal();
        assertEquals(LookAlikes.MOST, proposal.company().places().size());
        assertTrue(Remarks.company(proposal).get(0).endsWith("; there may be more"));
    }

    @Test
    void aSecondPrinterIsNamedWhereThePrintersNameStandsSecond() {
        for (Job.Moment moment : Job.moments().subList(0, FIRST_LAYERS)) {
            now = moment.second() * SECOND;
            for (String name : List.of("p1", "p2")) {
                hear("heat/" + name + "/bed/now", "%.1f", moment.value(Quantity.BED_ACTUAL));
                hear("heat/" + name + "/bed/set", "%.0f", moment.value(Quantity.BED_SETPOINT));
                hear("job/" + name + "/state", "%s", moment.state().word());
            }
        }
        Proposal proposal = survey.proposal();
        String bound = proposal.found(Role.BED_ACTUAL).orElseThrow().source().topicFilter();
        String state = proposal.found(Role.STATE).orElseThrow().source().topicFilter();
        assertEquals(bound.split("/", -1)[1], state.split("/", -1)[1]);
        assertEquals(
                List.of(bound.contains("p1") ? "+/p2/#" : "+/p1/#"),
                proposal.company().places());
    }

    /** Beside spruce there is another, but it rests and has no telling names. */
    @Test
    void onePrinterHasNoOtherBesideIt() {
        for (Printer printer : Printers.all()) {
            Survey one = new Survey();
            for (Job.Moment moment : Job.moments()) {
                for (Printer.Message message : printer.speaker().apply(moment)) {
                    byte[] payload = message.payload().getBytes(StandardCharsets.UTF_8);
                    one.hear(message.topic(), payload, moment.second() * SECOND);
                }
            }
            assertEquals(List.of(), one.proposal().company().places(), printer.name());
            assertEquals(List.of(), one.proposal().company().mixtures(), printer.name());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"\"p1\" \"p2\"", "1 2"})
    void severalOnOneTopicAreToldOf(String ids) {
        for (Job.Moment moment : Job.moments().subList(0, FIRST_LAYERS)) {
            now = moment.second() * SECOND;
            for (String id : ids.split(" ", -1)) {
                hear(
                        "shop/all",
                        "{\"id\":%s,\"bed\":{\"now\":%.1f,\"set\":%.0f}}",
                        id,
                        moment.value(Quantity.BED_ACTUAL),
                        moment.value(Quantity.BED_SETPOINT));
            }
        }
        String remark = "shop/all: several printers or heaters take turns there, told apart by /id: "
                + ids.replace("\"", "").replace(" ", ", ");
        Proposal proposal = survey.proposal();
        assertTrue(
                SurveyTable.reasons(proposal).stream().anyMatch(line -> line.startsWith(remark)),
                SurveyTable.reasons(proposal).toString());
        assertTrue(ProposedConfig.printerSections(proposal).contains("\n# " + remark)
                || ProposedConfig.printerSections(proposal).startsWith("# " + remark));
    }

    /** A name that changes once, such as a job's, and a number that only counts messages. */
    @Test
    void aNameThatChangesNowAndThenIsNoSpeaker() {
        for (Job.Moment moment : Job.moments().subList(0, FIRST_LAYERS)) {
            now = moment.second() * SECOND;
            hear(
                    "shop/alder",
                    "{\"name\":\"%s\",\"id\":%d,\"bed\":{\"now\":%.1f,\"set\":%.0f}}",
                    moment.second() < 200 ? "vase" : "cup",
                    moment.second(),
                    moment.value(Quantity.BED_ACTUAL),
                    moment.value(Quantity.BED_SETPOINT));
        }
        assertTrue(survey.proposal().found(Role.BED_ACTUAL).isPresent());
        assertEquals(List.of(), survey.proposal().company().mixtures());
    }
}
