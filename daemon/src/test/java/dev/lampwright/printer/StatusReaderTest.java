package dev.lampwright.printer;

import static dev.lampwright.testing.Alder.HEAT;
import static dev.lampwright.testing.Alder.JOB;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.CsvField;
import dev.lampwright.payload.Excerpt;
import dev.lampwright.payload.Payload;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import dev.lampwright.testing.Alder;
import dev.lampwright.testing.LogLines;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

final class StatusReaderTest {
    private static final String ROOM = "shop/alder/room_F";
    private static final String LEFT = "shop/alder/left";

    private final StatusReader reader = new StatusReader(Alder.bindings());
    private PrinterStatus status = PrinterStatus.nothingHeard();
    private long now = 1;

    private PrinterStatus hear(String topic, String payload) {
        return hear(topic, Alder.bytes(payload));
    }

    private PrinterStatus hear(String topic, byte[] payload) {
        status = reader.read(status, topic, payload, now++);
        return status;
    }

    @Test
    void readsEveryBindingOfATopicFromOneMessage() {
        now = 77;
        hear(HEAT, "{\"plate\":{\"now\":41.5,\"set\":60},\"tip\":{\"now\":180,\"set\":215}}");
        assertEquals(new Reading(41.5, 77), status.reading(Quantity.BED_ACTUAL));
        assertEquals(new Reading(60, 77), status.reading(Quantity.BED_SETPOINT));
        assertEquals(new Reading(180, 77), status.reading(Quantity.NOZZLE_ACTUAL));
        assertEquals(new Reading(215, 77), status.reading(Quantity.NOZZLE_SETPOINT));
        assertTrue(status.heard());
        assertEquals(77, status.heardAtNanos());
    }

    @Test
    void readsStateAndReadingFromOneMessage() {
        hear(JOB, "{\"phase\":\"RUN\",\"percent\":25}");
        assertEquals(PrinterState.PRINTING, status.state());
        assertEquals(0.25, status.value(Quantity.JOB_PROGRESS), 1e-12);
    }

    @Test
    void aMessageThatLacksAFieldLeavesItsReading() {
        hear(HEAT, "{\"plate\":{\"now\":41.5}}");
        hear(HEAT, "{\"plate\":{\"set\":60}}");
        assertEquals(new Reading(41.5, 1), status.reading(Quantity.BED_ACTUAL));
        assertEquals(new Reading(60, 2), status.reading(Quantity.BED_SETPOINT));
    }

    /** Each value takes some 80 bytes once it is read, and the service has 32 MiB in total. */
    @Test
    void aMessageOfTooManyValuesIsToldAndNotRead() {
        hear(HEAT, "{\"plate\":{\"now\":41.5}}");
        PrinterStatus before = status;
        try (LogLines log = new LogLines()) {
            hear(HEAT, "{\"plate\":{\"now\":50},\"many\":[{}" + ",{}".repeat(Payload.MOST_VALUES) + "]}");
            assertSame(before, status);
            assertEquals(4, log.with("more than 50000 values").size(), "once for each binding there");
        }
        hear(HEAT, "{\"plate\":{\"now\":51},\"picture\":\"" + "x".repeat(Payload.MOST_BYTES / 2) + "\"}");
        assertEquals(51, status.value(Quantity.BED_ACTUAL));
    }

    @Test
    void ignoresOtherTopics() {
        assertSame(PrinterStatus.nothingHeard(), hear("shop/birch/job", "{\"phase\":\"RUN\"}"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"215.4", "\"215.4\"", "\" 215.4 \"", "2154e-1", "\"+2154e-1\"", "\"215,4\""})
    void takesNumbersAndNumbersAsText(String number) {
        hear(HEAT, "{\"tip\":{\"now\":" + number + "}}");
        assertEquals(215.4, status.value(Quantity.NOZZLE_ACTUAL), 1e-12);
    }

    /** 77 °F is 25 °C by the definition of the scale. */
    @ParameterizedTest
    @ValueSource(strings = {"77", " 77.0\r\n", "77,0"})
    void scalesAndOffsetsABarePayload(String payload) {
        hear(ROOM, payload);
        assertEquals(25, status.value(Quantity.CHAMBER_ACTUAL), 1e-9);
    }

    @Test
    void nullMeansUnknown() {
        hear(HEAT, "{\"plate\":{\"now\":41.5}}");
        hear(HEAT, "{\"plate\":{\"now\":null}}");
        assertTrue(Double.isNaN(status.value(Quantity.BED_ACTUAL)));
        assertEquals(2, status.reading(Quantity.BED_ACTUAL).atNanos());
    }

    @Test
    void nullLeavesTheState() {
        hear(JOB, "{\"phase\":\"RUN\"}");
        hear(JOB, "{\"phase\":null}");
        assertEquals(PrinterState.PRINTING, status.state());
        assertEquals(2, status.heardAtNanos());
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "100, 1", "-0.5, 0", "100.9, 1", "50, 0.5"})
    void holdsProgressBetweenNoughtAndOne(String percent, double progress) {
        hear(JOB, "{\"percent\":" + percent + "}");
        assertEquals(progress, status.value(Quantity.JOB_PROGRESS), 1e-12);
    }

    static List<String> unreadableHeat() {
        return List.of(
                "",
                "{",
                "garbage",
                "\0\1\2",
                "{\"plate\":{\"now\":42}} and more",
                "{\"plate\":{\"now\":NaN}}",
                "{\"plate\":{\"now\":Infinity}}",
                "{\"plate\":{\"now\":\"NaN\"}}",
                "{\"plate\":{\"now\":\"Infinity\"}}",
                "{\"plate\":{\"now\":\"0x1p3\"}}",
                "{\"plate\":{\"now\":\"42d\"}}",
                "{\"plate\":{\"now\":\"42 °C\"}}",
                "{\"plate\":{\"now\":\"\"}}",
                "{\"plate\":{\"now\":\"" + "1".repeat(100_000) + "\"}}",
                "{\"plate\":{\"now\":" + "1".repeat(100_000) + "}}",
                "{\"plate\":{\"now\":1e999}}",
                "{\"plate\":{\"now\":true}}",
                "{\"plate\":{\"now\":[42]}}",
                "{\"plate\":{\"now\":{}}}",
                "{\"plate\":{\"now\":-50.1}}",
                "{\"plate\":{\"now\":600.1}}",
                "[".repeat(100_000),
                "{\"plate\":".repeat(1000) + "1" + "}".repeat(1000),
                "{\"plate\":{\"now\":42},\"x\":\"" + "x".repeat(Payload.MOST_BYTES) + "\"}");
    }

    @ParameterizedTest
    @MethodSource("unreadableHeat")
    void whatIsUnreadableChangesNothing(String payload) {
        PrinterStatus before = hear(HEAT, "{\"plate\":{\"now\":41.5}}");
        assertSame(before, hear(HEAT, payload));
    }

    @ParameterizedTest
    @ValueSource(strings = {"-1", "abc", "", "1e400"})
    void whatIsNoTimeLeftChangesNothing(String payload) {
        PrinterStatus before = hear(LEFT, "10");
        assertEquals(600, before.value(Quantity.JOB_LEFT), 1e-9);
        assertSame(before, hear(LEFT, payload));
    }

    @ParameterizedTest
    @ValueSource(strings = {"{}", "[\"RUN\"]", "{\"a\":1}", "\"\"", "\"  \""})
    void whatIsNoWordChangesNothing(String phase) {
        PrinterStatus before = hear(JOB, "{\"phase\":\"PREHEAT\"}");
        assertSame(before, hear(JOB, "{\"phase\":" + phase + "}"));
    }

    @Test
    void oneUnreadableValueDoesNotKeepTheOthersOut() {
        hear(HEAT, "{\"plate\":{\"now\":\"?\",\"set\":60}}");
        assertTrue(Double.isNaN(status.value(Quantity.BED_ACTUAL)));
        assertEquals(60, status.value(Quantity.BED_SETPOINT), 0);
    }

    @Test
    void noBytesMakeItThrow() {
        Random random = new Random(20_14);
        for (int i = 0; i < 20_000; i++) {
            byte[] payload = new byte[random.nextInt(64)];
            random.nextBytes(payload);
            hear(i % 2 == 0 ? HEAT : ROOM, payload);
        }
        assertEquals(PrinterState.SILENT, status.state());
    }

    @ParameterizedTest
    @CsvSource({
        "RUN, PRINTING",
        "run, PRINTING",
        "RUN 3, PRINTING",
        "ALARM, FAULT",
        "alarm: door, FAULT",
        "NOZZLE FAILED, FAULT",
        "RUN FAILED, PRINTING",
        "' PREHEAT ', WARMING",
    })
    void firstWordThatMatchesWins(String word, PrinterState state) {
        hear(JOB, "{\"phase\":\"" + word + "\"}");
        assertEquals(state, status.state());
    }

    @Test
    void unknownWordKeepsTheStateAndCountsAsHeard() {
        hear(JOB, "{\"phase\":\"RUN\"}");
        hear(JOB, "{\"phase\":\"RUNNING\"}");
        assertEquals(PrinterState.PRINTING, status.state());
        assertEquals(2, status.heardAtNanos());
    }

    /** The log says where the word goes, and says it again if it said so before in another state. */
    @Test
    void anUnknownWordAfterAFaultIsTold() {
        try (LogLines log = new LogLines()) {
            hear(JOB, "{\"phase\":\"RUN\"}");
            hear(JOB, "{\"phase\":\"RUNNING\"}");
            assertEquals(
                    1,
                    log.with("\"RUNNING\", which no state is bound to, so the state stays as it was")
                            .size());
            hear(JOB, "{\"phase\":\"ALARM\"}");
            hear(JOB, "{\"phase\":\"RUNNING\"}");
            hear(JOB, "{\"phase\":\"RUNNING\"}");
            assertEquals(PrinterState.FAULT, status.state());
            assertEquals(
                    1,
                    log.with(
                                    "so the fault stays until it reports a word that is bound; add this one under [printer.state],"
                                            + " such as held = [\"RUNNING\"]")
                            .size());
        }
    }

    @ParameterizedTest
    @CsvSource({"3, '3', PRINTING", "true, TRUE, PRINTING", "3, '4', SILENT"})
    void numberOrTruthIsTheWordItIsWrittenAs(String value, String word, PrinterState state) {
        StatusReader coded = new StatusReader(new Bindings(
                List.of(new Bindings.OfState(
                        new Source(JOB, PayloadPath.at("/code")), Map.of(PrinterState.PRINTING, List.of(word)))),
                Map.of(),
                Map.of()));
        PrinterStatus after = coded.read(status, JOB, Alder.bytes("{\"code\":" + value + "}"), 1);
        assertEquals(state, after.state());
    }

    @Test
    void withoutStateBindingTheReadingsTell() {
        StatusReader guessing = new StatusReader(Alder.bindingsWithoutState());
        PrinterStatus after = guessing.read(status, JOB, Alder.bytes("{\"percent\":40}"), 1);
        assertEquals(PrinterState.PRINTING, after.state());
        assertSame(after, guessing.read(after, "shop/birch/job", Alder.bytes("{\"percent\":100}"), 2));
    }

    /** RFC 6901, section 5: its document, its pointers and the values they refer to, if those are numbers. */
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '`',
            value = {"/, 0", "/a~1b, 1", "/c%d, 2", "/e^f, 3", "/g|h, 4", "/i\\j, 5", "/k\"l, 6", "`/ `, 7", "/m~0n, 8"
            })
    void pointsAsRfc6901Says(String pointer, double value) {
        assertEquals(value, atPointer(pointer), 0);
    }

    /** RFC 6901, section 5, where it is not a number; and section 4, for the leading zero and for "-". */
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '`',
            value = {"``", "/foo", "/foo/0", "/foo/00", "/foo/-", "/foo/2", "/nothing"})
    void pointsAtNoNumber(String pointer) {
        assertTrue(Double.isNaN(atPointer(pointer)));
    }

    private double atPointer(String pointer) {
        String document = "{\"foo\": [\"bar\", \"baz\"], \"\": 0, \"a/b\": 1, \"c%d\": 2, \"e^f\": 3, \"g|h\": 4,"
                + " \"i\\\\j\": 5, \"k\\\"l\": 6, \" \": 7, \"m~n\": 8}";
        Bindings.OfReading binding = new Bindings.OfReading(new Source(HEAT, PayloadPath.at(pointer)));
        StatusReader pointing =
                new StatusReader(new Bindings(List.of(), Map.of(Quantity.BED_ACTUAL, List.of(binding)), Map.of()));
        return pointing.read(status, HEAT, Alder.bytes(document), 1).value(Quantity.BED_ACTUAL);
    }

    /** RFC 6901, section 5: "/foo/0" is "bar". */
    @Test
    void pointsIntoAnArray() {
        Bindings.OfState binding = new Bindings.OfState(
                new Source(JOB, PayloadPath.at("/foo/0")), Map.of(PrinterState.HELD, List.of("bar")));
        StatusReader pointing = new StatusReader(new Bindings(List.of(binding), Map.of(), Map.of()));
        PrinterStatus after = pointing.read(status, JOB, Alder.bytes("{\"foo\": [\"bar\", \"baz\"]}"), 1);
        assertEquals(PrinterState.HELD, after.state());
    }

    @Test
    void tellsATroubleOnceAndItsEndOnce() {
        try (LogLines log = new LogLines()) {
            for (int i = 0; i < 100; i++) {
                hear(HEAT, "{\"plate\":{\"now\":\"cold\\u0007\"}}");
            }
            assertEquals(1, log.with("bed.actual_C").size());
            assertEquals(
                    1,
                    log.with("WARN bed.actual_C: the value is not a number, at /plate/now in a message on " + HEAT
                                    + " that begins \"{\"plate\":{\"now\":\"cold\\u0007\"}}\"")
                            .size());
            hear(HEAT, "{\"plate\":{\"now\":20}}");
            hear(HEAT, "{\"plate\":{\"now\":21}}");
            assertEquals(2, log.with("bed.actual_C").size());
            assertEquals(1, log.with("INFO bed.actual_C").size());
        }
    }

    @Test
    void showsAtMostSixtyPrintableCharactersOfThePayload() {
        try (LogLines log = new LogLines()) {
            hear(ROOM, "\u001b[31m" + "x".repeat(1000));
            assertEquals(1, log.with("begins \".[31m" + "x".repeat(55) + "\"").size());
        }
    }

    @Test
    void tellsEachUnknownWordOnceAndNotTooMany() {
        try (LogLines log = new LogLines()) {
            for (int i = 0; i < 3000; i++) {
                hear(JOB, "{\"phase\":\"word " + i % 1000 + "\"}");
            }
            assertEquals(32, log.with("the printer reports \"word").size());
            assertEquals(1, log.with("the printer reports \"word 7\"").size());
        }
    }

    @Test
    void tellsOnceThatABindingNeverMatches() {
        try (LogLines log = new LogLines()) {
            for (int i = 0; i < 100; i++) {
                hear(HEAT, "{\"plate\":{\"now\":20}}");
            }
            assertEquals(1, log.with("nozzle.setpoint_C: 20 messages").size());
            assertEquals(
                    3, log.with("the last begins \"{\"plate\":{\"now\":20}}\"").size());
            assertEquals(0, log.with("bed.actual_C").size());
        }
    }

    /** A printer may send each of its values in a separate message; a binding that matched once is right. */
    @Test
    void aBindingThatHasMatchedMayBeMissingAsOftenAsItLikes() {
        try (LogLines log = new LogLines()) {
            hear(HEAT, "{\"tip\":{\"set\":215}}");
            for (int i = 0; i < 100; i++) {
                hear(HEAT, "{\"plate\":{\"now\":20}}");
            }
            assertEquals(0, log.with("nozzle.setpoint_C").size());
            assertEquals(1, log.with("nozzle.actual_C: 20 messages").size());
        }
    }

    /** The messages before the first match do not count after it either. */
    @Test
    void aBindingThatMatchesLateIsNotComplainedOf() {
        try (LogLines log = new LogLines()) {
            for (int i = 0; i < 40; i++) {
                hear(HEAT, i == 19 ? "{\"tip\":{\"set\":215}}" : "{\"plate\":{\"now\":20}}");
            }
            assertEquals(0, log.with("nozzle.setpoint_C").size());
        }
    }

    @Test
    void tellsOnceOfTopicsThatBringNothing() {
        try (LogLines log = new LogLines()) {
            hear(HEAT, "{}");
            reader.tellQuietTopics();
            reader.tellQuietTopics();
            assertEquals(
                    1,
                    log.with("state: nothing has arrived on " + JOB + " yet; ").size());
            assertEquals(
                    1, log.with("job.left_s: nothing has arrived on " + LEFT).size());
            assertEquals(0, log.with("nothing has arrived on " + HEAT).size());
        }
    }

    private static StatusReader reading(Quantity quantity, Bindings.OfReading... bindings) {
        return new StatusReader(new Bindings(List.of(), Map.of(quantity, List.of(bindings)), Map.of()));
    }

    @Test
    void ofSeveralSourcesTheNewestMessageCounts() {
        StatusReader two = reading(
                Quantity.BED_ACTUAL,
                new Bindings.OfReading(new Source("a", PayloadPath.BARE)),
                new Bindings.OfReading(new Source("b", PayloadPath.at("/t")), Unit.FAHRENHEIT, 1, 0));
        PrinterStatus after = two.read(status, "a", Alder.bytes("41"), 1);
        after = two.read(after, "b", Alder.bytes("{\"t\": 113}"), 2);
        assertEquals(45, after.value(Quantity.BED_ACTUAL), 1e-9);
        assertEquals(2, after.reading(Quantity.BED_ACTUAL).atNanos());
        after = two.read(after, "a", Alder.bytes("46"), 3);
        assertEquals(new Reading(46, 3), after.reading(Quantity.BED_ACTUAL));
    }

    @Test
    void ofSeveralStateSourcesTheNewestMessageCounts() {
        StatusReader two = new StatusReader(new Bindings(
                List.of(
                        new Bindings.OfState(
                                new Source("job", PayloadPath.BARE), Map.of(PrinterState.PRINTING, List.of("RUN"))),
                        new Bindings.OfState(
                                new Source("door", PayloadPath.BARE), Map.of(PrinterState.FAULT, List.of("OPEN")))),
                Map.of(),
                Map.of()));
        PrinterStatus after = two.read(status, "job", Alder.bytes("RUN"), 1);
        after = two.read(after, "door", Alder.bytes("OPEN"), 2);
        assertEquals(PrinterState.FAULT, after.state());
        assertEquals(
                PrinterState.PRINTING,
                two.read(after, "job", Alder.bytes("RUN"), 3).state());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "41.5;60;180 | 3 | 180",
                "41.5;\"60\";180 | 2 | 60",
                "41.5;60 | 3 | NaN",
                " 41.5 ; 60 | 1 | 41.5",
            })
    void readsFieldsOfALine(String line, int field, double value) {
        Source source = new Source(HEAT, PayloadPath.BARE, List.of(new CsvField(field, ';')));
        PrinterStatus after = reading(Quantity.NOZZLE_ACTUAL, new Bindings.OfReading(source))
                .read(status, HEAT, Alder.bytes(line), 1);
        assertEquals(value, after.value(Quantity.NOZZLE_ACTUAL), 0);
    }

    @Test
    void cutsAFieldOfATextAtAPointerAndANumberOutOfIt() {
        Source source = new Source(
                HEAT, PayloadPath.at("/line"), List.of(new CsvField(2, ','), new Excerpt("T=(?<value>[0-9.]+)")));
        PrinterStatus after = reading(Quantity.NOZZLE_ACTUAL, new Bindings.OfReading(source))
                .read(status, HEAT, Alder.bytes("{\"line\": \"B=60,T=215.5 up\"}"), 1);
        assertEquals(215.5, after.value(Quantity.NOZZLE_ACTUAL), 0);
    }

    @Test
    void aCutOfWhatIsNoTextChangesNothing() {
        Source source = new Source(HEAT, PayloadPath.at("/line"), List.of(new CsvField(2, ',')));
        assertSame(
                status,
                reading(Quantity.NOZZLE_ACTUAL, new Bindings.OfReading(source))
                        .read(status, HEAT, Alder.bytes("{\"line\": [1, 2]}"), 1));
    }

    /** As README shows: of several flags in one message, the most important comes last. */
    @Test
    void aStateThatIsToldByFlagsIsWhatTheLastOfThemSays() {
        Bindings.OfState printing = new Bindings.OfState(
                new Source(JOB, PayloadPath.at("/printing")),
                Map.of(PrinterState.PRINTING, List.of("true"), PrinterState.IDLE, List.of("false")));
        Bindings.OfState error = new Bindings.OfState(
                new Source(JOB, PayloadPath.at("/error")), Map.of(PrinterState.FAULT, List.of("1*", "2*")));
        StatusReader flags = new StatusReader(new Bindings(List.of(printing, error), Map.of(), Map.of()));
        Map<String, PrinterState> told = Map.of(
                "{\"error\": 0, \"printing\": false}", PrinterState.IDLE,
                "{\"error\": 0, \"printing\": true}", PrinterState.PRINTING,
                "{\"error\": 17, \"printing\": true}", PrinterState.FAULT,
                "{\"error\": 17, \"printing\": false}", PrinterState.FAULT);
        told.forEach((payload, state) -> {
            status = flags.read(status, JOB, Alder.bytes(payload), now++);
            assertEquals(state, status.state(), payload);
        });
    }

    /** 0 °F and 0 K are not targets: such a heater is off. */
    @ParameterizedTest
    @EnumSource(names = {"FAHRENHEIT", "KELVIN", "CELSIUS"})
    void aTargetOfZeroIsOffInAnyUnit(Unit unit) {
        Bindings.OfReading target = new Bindings.OfReading(new Source(HEAT, PayloadPath.BARE), unit, 1, 0);
        assertEquals(
                0,
                reading(Quantity.BED_SETPOINT, target)
                        .read(status, HEAT, Alder.bytes("0"), 1)
                        .value(Quantity.BED_SETPOINT));
    }

    /** A printer that says no more about a fault than the word for one. */
    @Test
    void theWordThatMeansAFaultIsItsTextWhereNoOtherIsTold() {
        hear(JOB, "{\"phase\": \"ALARM tip blocked\"}");
        assertEquals(PrinterState.FAULT, status.state());
        assertEquals(Optional.of("ALARM tip blocked"), status.faultText());
        hear(JOB, "{\"phase\": \"RUN\"}");
        assertEquals(Optional.empty(), status.faultText());
    }

    /** A printer with a text for its faults explains them there, and the state's word adds nothing. */
    @Test
    void theWordThatMeansAFaultLeavesATextThatIsToldElsewhere() {
        StatusReader telling = new StatusReader(new Bindings(Alder.bindings().states(), Map.of(), Map.of())
                .withFaultText(new Source("text", PayloadPath.BARE)));
        PrinterStatus after = telling.read(status, "text", Alder.bytes("tip blocked"), 1);
        after = telling.read(after, JOB, Alder.bytes("{\"phase\": \"ALARM 7\"}"), 2);
        assertEquals(PrinterState.FAULT, after.state());
        assertEquals(Optional.of("tip blocked"), after.faultText(), "not overwritten");
        after = telling.read(after, JOB, Alder.bytes("{\"phase\": \"RUN\"}"), 3);
        assertEquals(Optional.of("tip blocked"), after.faultText(), "not cleared");
        assertEquals(
                Optional.empty(),
                telling.read(after, "text", Alder.bytes(""), 4).faultText());
    }

    @Test
    void keepsThePrintersOwnWordsForAFault() {
        StatusReader telling = new StatusReader(
                new Bindings(List.of(), Map.of(), Map.of()).withFaultText(new Source(JOB, PayloadPath.at("/text"))));
        PrinterStatus after = telling.read(status, JOB, Alder.bytes("{\"text\": \" tip\\u001b[31m blocked \"}"), 1);
        assertEquals(Optional.of("tip.[31m blocked"), after.faultText());
        after = telling.read(after, JOB, Alder.bytes("{\"text\": \"" + "x".repeat(5000) + "\"}"), 2);
        assertEquals(Optional.of("x".repeat(200)), after.faultText());
        assertEquals(
                Optional.empty(),
                telling.read(after, JOB, Alder.bytes("{\"text\": null}"), 3).faultText());
        assertEquals(
                Optional.empty(),
                telling.read(after, JOB, Alder.bytes("{\"text\": \"\"}"), 3).faultText());
    }
}
