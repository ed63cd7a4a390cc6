package dev.lampwright.tool.survey;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.broker.Broker;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterState;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SurveyTest {
    private static final long SECOND = 1_000_000_000L;
    private static final List<String> PARTS = List.of(
            "bed",
            "nozzle",
            "target",
            "actual",
            "state",
            "camera",
            "alarm",
            "progress",
            "left",
            "layer",
            "idle",
            "READY",
            "print",
            "paused",
            "snap",
            "done",
            "fault",
            " ",
            "/",
            "_",
            ".",
            ";",
            ",",
            "=",
            "*",
            "\"",
            "\\",
            "'",
            "~",
            "~1",
            "#",
            "\n",
            "\t",
            "\0",
            "\u2028",
            "\ud800",
            "é",
            "°C",
            "%",
            "(",
            "[",
            "?<value>",
            "\\E",
            "41",
            "41.5",
            "0",
            "-3",
            "1e9",
            "PT1M",
            "0:01:00",
            "true");
    private static final Broker BROKER = new Broker(
            URI.create("mqtts://rowan.example:8883"),
            Optional.of(Path.of("/etc/ca \"own\".pem")),
            Optional.of("lamp"),
            Optional.of(Path.of("/etc/password")));

    private final Survey survey = new Survey();
    private long now;

    private void hear(String topic, String payload) {
        survey.hear(topic, payload.getBytes(StandardCharsets.UTF_8), now);
    }

    private void hearWholeJob(Printer printer) {
        for (Job.Moment moment : Job.moments()) {
            now = moment.second() * SECOND;
            printer.speaker().apply(moment).forEach(message -> hear(message.topic(), message.payload()));
        }
    }

    private static Printer printer(String name) {
        return Printers.all().stream()
                .filter(printer -> printer.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private Found found(Role role) {
        return survey.proposal().found(role).orElseThrow();
    }

    @Test
    void tellsOfEachValueHowOftenAndWhat() {
        for (int i = 0; i <= 10; i++) {
            now = i * SECOND / 2;
            hear("shop/alder/heat", "{\"plate\":" + (20 + i) + "}");
        }
        Proposal.Row row = survey.proposal().rows().get(0);
        assertEquals("shop/alder/heat", row.topic());
        assertEquals("/plate", row.place());
        assertEquals(11, row.count());
        assertEquals(2, row.perSecond(), 1e-9);
        assertEquals("20 to 30", row.range());
        assertEquals("30", row.last());
    }

    @Test
    void saysWhy() {
        hearWholeJob(printer("alder"));
        List<String> reasons = found(Role.NOZZLE_ACTUAL).reasons();
        assertTrue(reasons.contains("“tip” speaks of the nozzle, “now” of what is measured"), reasons.toString());
        assertTrue(reasons.contains("the one comes to the other and stays"), reasons.toString());
        assertTrue(found(Role.LEFT).reasons().contains("goes down with time, in s"));
        assertTrue(found(Role.STATE).reasons().stream().anyMatch(reason -> reason.contains("“PREHEAT” for warming")));
    }

    @Test
    void withoutNamesTheHotterPairIsTheNozzle() {
        hearWholeJob(printer("linden"));
        assertEquals(
                "the payload itself, field 4",
                found(Role.NOZZLE_ACTUAL).source().place());
        assertEquals(
                "the payload itself, field 3", found(Role.BED_SETPOINT).source().place());
    }

    @Test
    void findsTextAndPicturesToo() {
        hearWholeJob(printer("aspen"));
        assertEquals(
                new Source("aspen/fault", PayloadPath.BARE),
                found(Role.FAULT_TEXT).source());
        assertEquals(
                new Source("aspen/camera", PayloadPath.BARE), found(Role.CAMERA).source());
    }

    @Test
    void aHouseWithoutAPrinterHasNone() {
        Random random = new Random(3);
        for (Job.Moment moment : Job.moments()) {
            now = moment.second() * SECOND;
            Printers.noise(moment, random).forEach(message -> hear(message.topic(), message.payload()));
        }
        assertEquals(
                List.of(),
                survey.proposal().found().stream()
                        .map(Found::role)
                        .filter(role -> HeatedPart.of(role).isPresent())
                        .toList());
    }

    @Test
    void namesAloneSufficeWhileThePrinterRests() {
        for (int i = 0; i < 20; i++) {
            now = i * SECOND;
            hear("shop/alder/bed/now", "22.1");
            hear("shop/alder/bed/set", "0");
            hear("shop/alder/state", "READY");
        }
        assertEquals("shop/alder/bed/now", found(Role.BED_ACTUAL).source().topicFilter());
        assertEquals("shop/alder/bed/set", found(Role.BED_SETPOINT).source().topicFilter());
        assertEquals("shop/alder/state", found(Role.STATE).source().topicFilter());
    }

    @Test
    void theSameMessagesGiveTheSameAnswer() {
        Survey again = new Survey();
        for (Job.Moment moment : Job.moments()) {
            now = moment.second() * SECOND;
            for (Printer.Message message : printer("hazel").speaker().apply(moment)) {
                hear(message.topic(), message.payload());
                again.hear(message.topic(), message.payload().getBytes(StandardCharsets.UTF_8), now);
            }
        }
        assertEquals(again.proposal(), survey.proposal());
    }

    /** Four times as many topics as are kept, with long payloads, and one endless stream: the memory stays bounded. */
    @Test
    void keepsWithinItsBounds() {
        for (int i = 0; i < 4 * Survey.MOST_VALUES; i++) {
            hear("t/" + i, "x".repeat(200) + i);
            hear("t/same", Integer.toString(i));
            hear("w/same", "word" + i);
        }
        hear("t".repeat(1000), "1");
        Proposal proposal = survey.proposal();
        assertEquals(Survey.MOST_VALUES, proposal.rows().size());
        assertAtLeast(3 * Survey.MOST_VALUES, proposal.leftOut());
        assertEquals(3 * 4 * Survey.MOST_VALUES + 1, proposal.messages());
    }

    @Test
    void whatComesFromOutsideIsShownOnOneLine() {
        hear("shop/\u001b[2Jalder", "\u001b]0;owned\u0007\nsecond line");
        SurveyTable.values(survey.proposal(), 10)
                .forEach(line -> assertTrue(line.chars().noneMatch(Character::isISOControl), line));
    }

    @Test
    void aTableThatIsTooLongSaysSo() {
        for (int i = 0; i < 30; i++) {
            hear("t/" + i, "1");
        }
        List<String> lines = SurveyTable.values(survey.proposal(), 10);
        assertEquals(12, lines.size());
        assertEquals("… and 20 more values", lines.get(11));
    }

    @Test
    void whatIsWrittenIsAGoodFile() throws ConfigException {
        hearWholeJob(printer("larch"));
        Config config = ConfigFile.read(ProposedConfig.whole(survey.proposal(), BROKER), "larch.toml");
        assertEquals(BROKER, config.broker());
        assertEquals(
                Unit.FAHRENHEIT,
                config.bindings().readings().get(Quantity.BED_ACTUAL).get(0).unit());
        assertEquals(
                Unit.MINUTES,
                config.bindings().readings().get(Quantity.JOB_LEFT).get(0).unit());
        Map<PrinterState, List<String>> words =
                config.bindings().states().get(0).words();
        assertEquals(List.of("preheating"), words.get(PrinterState.WARMING));
        assertEquals(List.of("fault*"), words.get(PrinterState.FAULT));
    }

    @Test
    void topicsAndWordsMayHoldAnything() throws ConfigException {
        for (int i = 0; i < 20; i++) {
            now = i * SECOND;
            hear("a\"b\\c\td/bed\u007f/now", Integer.toString(20 + i));
            hear("a\"b\\c\td/state", "READY \"x\"\\y");
        }
        Config config = ConfigFile.read(ProposedConfig.whole(survey.proposal(), BROKER), "odd.toml");
        assertEquals(
                "a\"b\\c\td/bed\u007f/now",
                config.bindings()
                        .readings()
                        .get(Quantity.BED_ACTUAL)
                        .get(0)
                        .source()
                        .topicFilter());
        assertEquals(
                List.of("READY \"x\"\\y"),
                config.bindings().states().get(0).words().get(PrinterState.IDLE));
    }

    /** Whatever a broker sends: names and values that are likely to matter, mixed with text separators. */
    @Test
    void whatIsWrittenIsAlwaysAGoodFile() throws ConfigException {
        int written = 0;
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            Survey any = new Survey();
            List<String> topics = List.of(odd(random), odd(random) + "/" + odd(random), odd(random), "+", "");
            for (int i = 0; i < 60; i++) {
                String payload = random.nextInt(3) > 0
                        ? odd(random)
                        : "{\"" + odd(random).replace("\\", "\\\\").replace("\"", "\\\"") + "\":" + i + "}";
                any.hear(
                        topics.get(random.nextInt(topics.size())),
                        payload.getBytes(StandardCharsets.UTF_8),
                        i * SECOND);
            }
            Proposal proposal = any.proposal();
            if (ProposedConfig.isEnough(proposal)) {
                ConfigFile.read(ProposedConfig.whole(proposal, BROKER), "seed " + seed);
                written++;
            }
        }
        assertTrue(written > 100, written + " were worth writing");
    }

    private static String odd(Random random) {
        StringBuilder text = new StringBuilder();
        for (int parts = 1 + random.nextInt(4); parts > 0; parts--) {
            text.append(PARTS.get(random.nextInt(PARTS.size())));
        }
        return text.toString();
    }

    /**
     * The heaters are reported on one topic and make up most of what is found; the little that is reported elsewhere belongs to the same
     * printer.
     */
    @Test
    void whatAPrinterTellsOnAnotherTopicIsFoundToo() {
        for (int i = 0; i < 20; i++) {
            now = i * SECOND;
            hear(
                    "shop/alder/heat",
                    "{\"plate\":{\"now\":" + (20 + i) + ",\"set\":60},\"tip\":{\"now\":" + (20 + 5 * i)
                            + ",\"set\":215}}");
            hear("shop/alder/job", "{\"progress\":0.0}");
        }
        assertEquals("shop/alder/job", found(Role.PROGRESS).source().topicFilter());
    }

    private void hearABed() {
        for (int i = 0; i < 20; i++) {
            now = i * SECOND;
            hear("rowan/plate/now", "22.5");
            hear("rowan/plate/set", "0");
            hear("rowan/status_code", "4");
        }
    }

    @Test
    void aStateThatIsNotFoundIsSaidToBeMissing() {
        hearABed();
        List<String> lines = SurveyTable.reasons(survey.proposal());
        String file = ProposedConfig.whole(survey.proposal(), BROKER);
        for (String missing : List.of("not found: nozzle.actual_C, ", "not found: a state in words. ")) {
            assertTrue(lines.stream().anyMatch(line -> line.startsWith(missing)), lines.toString());
            assertTrue(file.lines().anyMatch(line -> line.startsWith("# " + missing)), file);
        }
        assertTrue(file.contains("nothing reports a fault"), file);
    }

    /** The example is correct: without its comment signs the file is valid, and binds a code and a flag. */
    @Test
    void theExampleOfAStateThatIsBoundByHandIsRight() throws ConfigException {
        hearABed();
        String file = ProposedConfig.whole(survey.proposal(), BROKER)
                .replaceAll(
                        "(?m)^# (\\[+printer\\.(state|condition)]+|(topic|at|printing|fault|state|is) = .*)$", "$1");
        Bindings bindings = ConfigFile.read(file, "rowan.toml").bindings();
        assertEquals(List.of("7", "8"), bindings.states().get(0).words().get(PrinterState.FAULT));
        assertEquals(PrinterState.FAULT, bindings.conditions().get(0).state());
        assertEquals(List.of("true"), bindings.conditions().get(0).all().get(0).is());
    }

    @Test
    void aStateWithoutAWordForAFaultSaysSo() {
        hearABed();
        hear("rowan/state", "READY");
        String missing = "not heard: a word for a fault. ";
        assertTrue(SurveyTable.reasons(survey.proposal()).stream().anyMatch(line -> line.startsWith(missing)));
        assertTrue(ProposedConfig.printerSections(survey.proposal()).contains("\n# " + missing));
        hear("rowan/state", "ALARM door");
        assertFalse(SurveyTable.reasons(survey.proposal()).stream().anyMatch(line -> line.startsWith(missing)));
    }

    @Test
    void nothingIsNotEnough() {
        assertFalse(ProposedConfig.isEnough(survey.proposal()));
        hear("house/weather/wind", "3");
        assertFalse(ProposedConfig.isEnough(survey.proposal()));
    }
}
