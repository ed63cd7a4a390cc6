package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.broker.Broker;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.StatusReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Further heaters and user-defined numbers, in the proposal and in the file written from it. The printer is invented, and so are the rules:
 * common practice, no source.
 */
class OwnProposalTest {
    private static final long SECOND = 1_000_000_000L;
    private static final int FIRST_LAYERS = 400;
    private static final Broker BROKER =
            new Broker(URI.create("mqtt://127.0.0.1:1883"), Optional.empty(), Optional.empty(), Optional.empty());

    private final Survey survey = new Survey();
    private Job.Moment moment = Job.moments().get(0);

    private void hear(String topic, String format, Object... values) {
        survey.hear(topic, bytes(String.format(Locale.ROOT, format, values)), moment.second() * SECOND);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** The usual printer, and what it reports in addition. */
    private void print(int seconds, Consumer<Job.Moment> beside) {
        for (Job.Moment next : Job.moments().subList(0, seconds)) {
            moment = next;
            hear(
                    "shop/rowan/heat",
                    "{\"bed\":{\"now\":%.1f,\"set\":%.0f},\"nozzles\":[{\"now\":%.1f,\"set\":%.0f},%s]}",
                    next.value(Quantity.BED_ACTUAL),
                    next.value(Quantity.BED_SETPOINT),
                    next.value(Quantity.NOZZLE_ACTUAL),
                    next.value(Quantity.NOZZLE_SETPOINT),
                    secondTip(next));
            hear(
                    "shop/rowan/job",
                    "{\"phase\":\"%s\",\"percent\":%.0f}",
                    next.state().word(),
                    100 * next.value(Quantity.JOB_PROGRESS));
            beside.accept(next);
        }
    }

    /** Set lower than the first, and never used. */
    private static String secondTip(Job.Moment moment) {
        return String.format(Locale.ROOT, "{\"now\":%.1f,\"set\":%.0f}", secondActual(moment), secondTarget(moment));
    }

    private static double secondActual(Job.Moment moment) {
        return 22 + (moment.value(Quantity.NOZZLE_ACTUAL) - 22) * 128 / 193;
    }

    private static double secondTarget(Job.Moment moment) {
        return moment.value(Quantity.NOZZLE_SETPOINT) > 0 ? 150 : 0;
    }

    private static void nothing(Job.Moment moment) {}

    private Config proposed() throws ConfigException {
        return ConfigFile.read(ProposedConfig.whole(survey.proposal(), BROKER), "proposed");
    }

    private FoundOwn own(String key) {
        return survey.proposal().own().found().stream()
                .filter(one -> one.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError(
                        key + " is not in " + survey.proposal().own().found()));
    }

    private List<String> ownNames() {
        return List.copyOf(new TreeSet<>(
                survey.proposal().own().found().stream().map(FoundOwn::key).toList()));
    }

    /** What is proposed reads the second nozzle right, all through the job. */
    @Test
    void aSecondNozzleIsBoundAndReadsRight() throws ConfigException {
        print(FIRST_LAYERS, OwnProposalTest::nothing);
        Config config = proposed();
        assertEquals(List.of(new OwnHeater("nozzle2")), config.bindings().heaters());
        StatusReader reader = new StatusReader(config.bindings());
        PrinterStatus status = PrinterStatus.nothingHeard();
        for (Job.Moment next : Job.moments()) {
            String message =
                    "{\"bed\":{\"now\":22,\"set\":0},\"nozzles\":[{\"now\":22,\"set\":0}," + secondTip(next) + "]}";
            status = reader.read(status, "shop/rowan/heat", bytes(message), next.second() * SECOND);
            assertEquals(secondActual(next), status.own("nozzle2.actual_C").value(), 0.06);
            assertEquals(secondTarget(next), status.own("nozzle2.setpoint_C").value());
        }
    }

    /** Two different targets that stay the same while the survey listens are not names of the nozzles. */
    @Test
    void targetsDoNotTellNozzlesApart() {
        for (Job.Moment next : Job.moments().subList(100, 200)) {
            moment = next;
            hear(
                    "shop/rowan/heat",
                    "{\"bed\":{\"now\":%.1f,\"set\":%.0f},\"nozzles\":[{\"now\":%.1f,\"set\":215},%s]}",
                    next.value(Quantity.BED_ACTUAL),
                    next.value(Quantity.BED_SETPOINT),
                    next.value(Quantity.NOZZLE_ACTUAL),
                    secondTip(next));
        }
        assertEquals("/nozzles/1/now", own("nozzle2.actual_C").source().path().pointer());
        assertEquals(Optional.empty(), own("nozzle2.actual_C").source().part());
        assertEquals("/nozzles/1/set", own("nozzle2.setpoint_C").source().path().pointer());
    }

    /** It rests all the time; its name says what it is. */
    @ParameterizedTest
    @CsvSource({"nozzle_left, nozzle_right", "tool0, tool1", "head/1, head/2"})
    void aSecondNozzleThatRestsIsKnownByItsName(String first, String second) {
        for (Job.Moment next : Job.moments().subList(0, FIRST_LAYERS)) {
            moment = next;
            hear("shop/rowan/bed/now", "%.1f", next.value(Quantity.BED_ACTUAL));
            hear("shop/rowan/bed/set", "%.0f", next.value(Quantity.BED_SETPOINT));
            hear("shop/rowan/" + first + "/now", "%.1f", next.value(Quantity.NOZZLE_ACTUAL));
            hear("shop/rowan/" + first + "/set", "%.0f", next.value(Quantity.NOZZLE_SETPOINT));
            hear("shop/rowan/" + second + "/now", "%.1f", 22 + 0.1 * (next.second() % 3));
            hear("shop/rowan/" + second + "/set", "0");
        }
        assertEquals(
                "shop/rowan/" + second + "/now",
                own("nozzle2.actual_C").source().topicFilter());
        assertEquals(
                "shop/rowan/" + second + "/set",
                own("nozzle2.setpoint_C").source().topicFilter());
        assertEquals(2, ownNames().size(), ownNames().toString());
    }

    /** A heater with another name keeps its name. */
    @Test
    void anotherHeaterHasItsOwnName() throws ConfigException {
        print(FIRST_LAYERS, next -> {
            hear(
                    "shop/rowan/chamber",
                    "{\"now\":%.1f,\"set\":%.0f}",
                    next.value(Quantity.CHAMBER_ACTUAL),
                    next.value(Quantity.CHAMBER_SETPOINT));
            hear(
                    "shop/rowan/dryer",
                    "{\"now\":%.1f,\"set\":%d}",
                    22 + 33 * (1 - Math.exp(-next.second() / 60.0)),
                    next.second() > 3 ? 55 : 0);
        });
        assertEquals(
                List.of(new OwnHeater("nozzle2"), new OwnHeater("dryer")),
                proposed().bindings().heaters());
    }

    /** Another printer's nozzle is not a second one of this; nor is the same nozzle, reported twice. */
    @Test
    void theNozzleOfAnotherPrinterIsNone() {
        for (Job.Moment next : Job.moments().subList(0, FIRST_LAYERS)) {
            moment = next;
            for (String name : List.of("printer1", "printer2")) {
                hear("shop/" + name + "/bed/now", "%.1f", next.value(Quantity.BED_ACTUAL));
                hear("shop/" + name + "/bed/set", "%.0f", next.value(Quantity.BED_SETPOINT));
                hear("shop/" + name + "/nozzle/now", "%.1f", next.value(Quantity.NOZZLE_ACTUAL));
                hear("shop/" + name + "/nozzle/set", "%.0f", next.value(Quantity.NOZZLE_SETPOINT));
            }
            hear(
                    "shop/printer1/summary",
                    "{\"n\":%.1f,\"nt\":%.0f}",
                    next.value(Quantity.NOZZLE_ACTUAL),
                    next.value(Quantity.NOZZLE_SETPOINT));
        }
        assertEquals(List.of(), ownNames());
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(delimiter = '|', textBlock = """
            fan          | %2$d      | 0   | 255 |         | 0, 255 | true
            fan_percent  | %2$d      | 0   | 60  | percent |        | true
            partFan      | %2$d      | 0   | 100 | percent |        | true
            fan_rpm      | %2$d      | 0   | 5200| rpm     |        | true
            Lüfter       | %1$.2f    | 0   | 0.8 | share   |        | true
            fan          | %2$d      | 0   | 70  | percent |        | false
            humidity     | %1$.1f    | 31  | 44  | percent |        | true
            box_humidity | "%1$.0f %%" | 31 | 44 | percent |        | true
            speed_mm_s   | %1$.1f    | 0   | 180 | mm/s    |        | true
            print_speed  | %3$d      | 100 | 120 | percent | 0, 200 | true
            print_speed  | %1$.1f    | 3   | 180 |         | 0, 180 | false
            flow_pct     | %3$d      | 95  | 100 | percent | 0, 200 | true
            filament_left_g | %1$.1f | 812 | 901 | g       |        | true
            filament_left | %1$.1f   | 812 | 901 |         | 0, 901 | false
            supply_volts | %1$.2f    | 23.8| 24.1| V       |        | false
            board_temp   | %1$.1f    | 31  | 44  | °C      |        | false
            """)
    void numbersHaveTheirUnitAndTheirRange(
            String name, String format, double least, double most, String unit, String range, boolean certain)
            throws ConfigException {
        print(FIRST_LAYERS, next -> {
            double share = 0.5 - 0.5 * Math.cos(next.second() / 7.0 * Math.PI);
            double value = least + (most - least) * share;
            hear(
                    "shop/rowan/more",
                    "{\"" + name + "\":" + format + "}",
                    value,
                    Math.round(value),
                    Math.round(next.second() % 100 < 50 ? least : most));
        });
        FoundOwn found = survey.proposal().own().found().get(2);
        assertEquals(unit == null ? "" : unit, found.unit(), found.toString());
        assertEquals(
                range == null ? "" : range,
                String.join(", ", found.range().stream().map(NumberText::number).toList()),
                found.toString());
        assertEquals(certain, found.certain(), found.toString());
        List<String> bound = proposed().bindings().own().keySet().stream()
                .filter(quantity -> quantity.like().isEmpty())
                .map(OwnQuantity::key)
                .toList();
        assertEquals(certain ? List.of(found.key()) : List.of(), bound);
    }

    /** A commented-out line is valid once the # is removed. */
    @Test
    void whatIsCommentedOutCanBeTakenIn() throws ConfigException {
        print(
                FIRST_LAYERS,
                next -> hear(
                        "shop/rowan/more",
                        "{\"print_speed\":%.1f,\"supply_volts\":%.1f}",
                        100 + 50 * Math.sin(next.second()),
                        24 + 0.1 * Math.sin(next.second())));
        String text = ProposedConfig.whole(survey.proposal(), BROKER);
        String takenIn = text.replaceAll("(?m)^# (print_speed|supply) = ", "$1 = ");
        Config config = ConfigFile.read(takenIn, "proposed");
        assertEquals(
                List.of("nozzle2.actual_C", "nozzle2.setpoint_C", "print_speed", "supply"),
                config.bindings().own().keySet().stream()
                        .map(OwnQuantity::key)
                        .sorted()
                        .toList());
    }

    @Test
    void noMoreThanADozenAreNamedAndTheRestIsCounted() throws ConfigException {
        print(FIRST_LAYERS, next -> {
            List<String> rails = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                rails.add(String.format(
                        Locale.ROOT, "\"rail%c_volts\":%.2f", (char) ('a' + i), 5 + i + 0.1 * Math.sin(next.second())));
            }
            hear("shop/rowan/power", "{%s,\"fan_rpm\":%d}", String.join(",", rails), 3000 + next.second());
        });
        Proposal.Own own = survey.proposal().own();
        assertEquals(13, own.found().size(), "a heater is two readings");
        assertEquals(10, own.more());
        assertEquals("fan", own.found().get(2).key(), "what is certain comes first");
        String text = ProposedConfig.whole(survey.proposal(), BROKER);
        assertTrue(text.contains("\n# not listed here: 10 more numbers with a unit;"), text);
        proposed();
    }

    /** Things in other rooms, what only looks like a unit, flags and values that are already bound are not proposed. */
    @Test
    void whatIsNotThePrintersIsLeftAlone() {
        print(FIRST_LAYERS, next -> {
            hear("home/bathroom/humidity", "%.1f", 55 + Math.sin(next.second()));
            hear("home/bathroom/fan", "%d", next.second() % 256);
            hear(
                    "shop/rowan/more",
                    "{\"fan_on\":%d,\"filament\":1,\"uptime_s\":%d,\"id\":71}",
                    next.second() / 100 % 2,
                    next.second());
        });
        assertEquals(List.of("nozzle2.actual_C", "nozzle2.setpoint_C"), ownNames());
    }

    @Test
    void namesThatAreTakenAreNumbered() throws ConfigException {
        print(FIRST_LAYERS, next -> {
            hear("shop/rowan/left", "{\"fan\":{\"rpm\":%d}}", 3000 + next.second());
            hear("shop/rowan/right", "{\"fan\":{\"rpm\":%d}}", 2000 + next.second());
        });
        assertEquals(List.of("fan", "fan_2", "nozzle2.actual_C", "nozzle2.setpoint_C"), ownNames());
        proposed();
    }

    @Test
    void theyAreMergedIntoAFileThatExists() throws ConfigException {
        print(
                FIRST_LAYERS,
                next -> hear(
                        "shop/rowan/more",
                        "{\"fan_rpm\":%d,\"humidity\":%d}",
                        3000 + next.second(),
                        30 + next.second() % 9));
        String sections = ProposedConfig.printerSections(survey.proposal());
        String mine = """
            broker.url = "mqtt://127.0.0.1"
            controller.port = "/dev/ttyACM0"
            strip.pixels = 9

            [printer.readings]
            damp = { topic = "shop/rowan/more", at = "/humidity", unit = "% rh" }   # as it is
            bed.actual_C = { topic = "shop/rowan/heat", at = "/bed/now" }
            """;
        String merged = PrinterMerge.into(mine, sections);
        Config config = ConfigFile.read(merged, "merged");
        assertEquals(
                List.of("damp", "fan", "nozzle2.actual_C", "nozzle2.setpoint_C"),
                config.bindings().own().keySet().stream()
                        .map(OwnQuantity::key)
                        .sorted()
                        .toList());
        assertTrue(merged.contains(
                "damp = { topic = \"shop/rowan/more\", at = \"/humidity\", unit = \"% rh\" }   # as it is"));
        assertTrue(merged.contains("\n# nozzle2.actual_C: "), merged);
        assertEquals(merged, PrinterMerge.into(merged, sections), "a second time changes nothing");
        String renamed = merged.replace("nozzle2.", "right.").replace("\nfan = {", "\nbreeze = {");
        assertEquals(renamed, PrinterMerge.into(renamed, sections), "what the user has renamed stays so");
    }
}
