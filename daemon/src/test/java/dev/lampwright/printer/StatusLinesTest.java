package dev.lampwright.printer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.StatusLines.BadLineException;
import dev.lampwright.printer.StatusLines.Entry;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StatusLinesTest {
    private static final PrinterStatus NOTHING = PrinterStatus.nothingHeard();
    private static final long MS = 1_000_000;
    private static final List<PrinterState> STATES = List.of(PrinterState.values());
    private static final List<Quantity> QUANTITIES = List.of(Quantity.values());
    private static final double[] ODD = {0, 1, 1e-300, 0.1 + 0.2, Double.MIN_VALUE, 1 / 3.0};

    /** A status's output, with times that count from some start. */
    private record Told(
            PrinterState state,
            boolean heard,
            long heardAt,
            Map<Quantity, Reading> readings,
            Map<String, Long> ends,
            Optional<String> faultText) {
        static Told of(PrinterStatus status, long start) {
            Map<Quantity, Reading> readings = new LinkedHashMap<>();
            for (Quantity quantity : Quantity.values()) {
                Reading reading = status.reading(quantity);
                boolean never = reading.equals(Reading.UNKNOWN);
                readings.put(quantity, never ? reading : new Reading(reading.value(), reading.atNanos() - start));
            }
            Map<String, Long> ends = new LinkedHashMap<>();
            status.eventEnds().keySet().stream()
                    .sorted()
                    .forEach(name -> ends.put(name, status.eventEnds().get(name) - start));
            return new Told(
                    status.state(), status.heard(), status.heardAtNanos() - start, readings, ends, status.faultText());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 1, -7_000_000_001L, 86_400_000_000_123L, -4_611_686_018_427_387_904L})
    void whatIsWrittenIsReadAgain(long start) throws BadLineException {
        for (int seed = 0; seed < 60; seed++) {
            assertReadAgain(start, new Random(seed));
        }
    }

    private static void assertReadAgain(long start, Random random) throws BadLineException {
        PrinterStatus written = NOTHING;
        PrinterStatus read = NOTHING;
        long now = start - 3 * MS + 1;
        long tick = 0;
        for (int i = 0; i < 40; i++) {
            PrinterStatus before = written;
            for (int message = random.nextInt(4); message >= 0; message--) {
                now += 1 + random.nextInt(900) * MS;
                written = afterMessage(written, now, random);
            }
            tick += 1 + random.nextInt(100);
            for (String line : StatusLines.between(Statuses.of(before), Statuses.of(written), tick, start)) {
                Entry entry = StatusLines.read(line, read);
                assertEquals(Optional.of(tick), entry.tick(), line);
                assertEquals(0, entry.leftOut(), line);
                read = entry.status();
            }
            assertEquals(Told.of(written, start), Told.of(read, 0));
        }
    }

    private static PrinterStatus afterMessage(PrinterStatus before, long now, Random random) {
        PrinterStatus after = before.heardAt(now);
        if (random.nextInt(4) == 0) {
            after = after.withState(STATES.get(random.nextInt(STATES.size())), now);
        }
        for (int readings = random.nextInt(4); readings > 0; readings--) {
            Quantity quantity = QUANTITIES.get(random.nextInt(QUANTITIES.size()));
            after = after.withReading(quantity, value(random), now);
        }
        if (random.nextInt(5) == 0) {
            String name = List.of("camera", "door \"left\"", "größer").get(random.nextInt(3));
            after = after.withFaultText(List.of("", "door open", "größer \"3\"").get(random.nextInt(3)), now);
            after = after.withEvent(name, now + (random.nextInt(5) - 1) * 1_234_567_891L, now);
        }
        return after;
    }

    /** Values that every quantity may have. */
    private static double value(Random random) {
        return switch (random.nextInt(4)) {
            case 0 -> Double.NaN;
            case 1 -> ODD[random.nextInt(ODD.length)];
            default -> random.nextDouble();
        };
    }

    @Test
    void aRecordedLine() {
        PrinterStatus status = NOTHING.withState(PrinterState.WARMING, 2_500 * MS)
                .withReading(Quantity.BED_ACTUAL, 22.4, 2_500 * MS)
                .withReading(Quantity.JOB_LEFT, Double.NaN, 2_500 * MS)
                .withEvent("camera", 12_500 * MS, 2_500 * MS)
                .withFaultText("door open", 2_500 * MS);
        assertEquals(
                List.of(
                        "{\"tick\":91,\"at_s\":1.5,\"state\":\"warming\","
                                + "\"readings\":{\"bed.actual_C\":22.4,\"job.left_s\":null},\"events\":{\"camera\":10},\"fault_text\":\"door open\"}"),
                StatusLines.between(Statuses.of(NOTHING), Statuses.of(status), 91, 1_000 * MS));
    }

    /** JSON Lines in the sense of RFC 8259 texts: each stands alone and on one line. */
    @Test
    void everyLineIsJson() throws JsonProcessingException {
        PrinterStatus status = NOTHING.heardAt(5).withEvent("a\nb", 6, 5);
        List<String> lines = new ArrayList<>(StatusLines.between(Statuses.of(NOTHING), Statuses.of(status), 0, 4));
        lines.add(StatusLines.leftOut(131, 2));
        for (String line : lines) {
            assertEquals(1, line.lines().count(), line);
            assertTrue(new ObjectMapper().readTree(line).isObject(), line);
        }
    }

    @Test
    void timesAreNeverWrittenWithAnExponent() {
        assertEquals(
                List.of("{\"tick\":0,\"at_s\":0.000000001}"),
                StatusLines.between(Statuses.of(NOTHING), Statuses.of(NOTHING.heardAt(1)), 0, 0));
        assertEquals(
                List.of("{\"tick\":0,\"at_s\":0}"),
                StatusLines.between(Statuses.of(NOTHING), Statuses.of(NOTHING.heardAt(7)), 0, 7));
        assertEquals(
                List.of("{\"tick\":0,\"at_s\":100}"),
                StatusLines.between(Statuses.of(NOTHING), Statuses.of(NOTHING.heardAt(100_000 * MS)), 0, 0));
    }

    @Test
    void aLineWrittenByHand() throws BadLineException {
        Entry entry = StatusLines.read("{\"at_s\": 1.5, \"state\": \"printing\"}", NOTHING);
        assertEquals(Optional.empty(), entry.tick());
        assertEquals(1_500 * MS, entry.atNanos());
        assertEquals(PrinterState.PRINTING, entry.status().state());
        assertEquals(1_500 * MS, entry.status().heardAtNanos());
    }

    @Test
    void framesLeftOut() throws BadLineException {
        PrinterStatus before = NOTHING.heardAt(3);
        Entry entry = StatusLines.read(StatusLines.leftOut(131, 2), before);
        assertEquals(new Entry(Optional.of(131L), 0, before, 2), entry);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            []                                        | is not a JSON object; write for instance {"at_s": 1.5, "state": "printing"}
            {"at_s": 1                                | is not one JSON object: Unexpected end-of-input
            {"at_s": 1} {"at_s": 2}                   | is not one JSON object: Trailing token
            {"at_s": 1, "at_s": 2}                    | is not one JSON object: Duplicate field 'at_s'
            {"at": 1}                                 | has "at", which is not known; there are tick, at_s, printer, state, readings, own_readings, events, fault_text, left_out
            {"state": "idle"}                         | has no time; write for instance "at_s": 1.5
            {"at_s": "1"}                             | has "1" for at_s; write seconds, for instance 1.5
            {"at_s": 1e99}                            | has 1E+99 for at_s; write seconds, for instance 1.5
            {"at_s": 1, "tick": 1.5}                  | has 1.5 for tick; write a whole number, 0 or more
            {"at_s": 1, "tick": -1}                   | has -1 for tick; write a whole number, 0 or more
            {"at_s": 1, "state": "busy"}              | has the state "busy", which is not known; there are silent, idle, warming, printing, held, done, stopped, fault
            {"at_s": 1, "state": 3}                   | has the state 3, which is not known
            {"at_s": 1, "readings": 22}               | has 22 for readings; write for instance {"bed.actual_C": 22.4}
            {"at_s": 1, "readings": {"bed": 22}}      | has the reading "bed", which is not known; there are bed.actual_C, bed.setpoint_C
            {"at_s": 1, "readings": {"job.progress": "1"}} | has "1" for job.progress; write a number, or null for unknown
            {"at_s": 1, "readings": {"job.progress": 45}}  | has 45 for job.progress, and the value is out of range, which is 0 to 1
            {"at_s": 1, "events": ["camera"]}         | has ["camera"] for events; write for instance {"camera": 10}
            {"at_s": 1, "events": {"camera": true}}   | has true for camera; write seconds, for instance 1.5
            {"at_s": 1, "fault_text": null}           | has null for fault_text; write text, for instance "door open"
            {"left_out": 2}                           | has left_out, which goes with tick alone; write for instance {"tick": 131, "left_out": 2}
            {"tick": 3, "at_s": 1, "left_out": 2}     | has left_out, which goes with tick alone
            """)
    void aLineThatMakesNoSense(String line, String complaint) {
        BadLineException e = assertThrows(BadLineException.class, () -> StatusLines.read(line, NOTHING));
        assertTrue(e.getMessage().startsWith(complaint), e.getMessage());
        assertEquals(1, e.getMessage().lines().count(), e.getMessage());
    }

    /** Each line names its printer, and lines are in chronological order across printers. */
    @Test
    void linesOfSeveralPrinters() throws BadLineException {
        Statuses before = Statuses.NOTHING_HEARD.with("birch", NOTHING.heardAt(1));
        Statuses after = before.with("alder", NOTHING.withState(PrinterState.DONE, 3_000 * MS))
                .with("birch", before.of("birch").withState(PrinterState.HELD, 2_000 * MS));
        List<String> lines = StatusLines.between(before, after, 9, 0);
        assertEquals(
                List.of(
                        "{\"tick\":9,\"printer\":\"birch\",\"at_s\":2,\"state\":\"held\"}",
                        "{\"tick\":9,\"printer\":\"alder\",\"at_s\":3,\"state\":\"done\"}"),
                lines);
        Entry entry = StatusLines.read(lines.get(1), before);
        assertEquals("alder", entry.printer());
        assertEquals(PrinterState.DONE, entry.status().state());
    }
}
