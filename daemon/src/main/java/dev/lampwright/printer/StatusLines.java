package dev.lampwright.printer;

import dev.lampwright.payload.JsonLine;
import dev.lampwright.payload.Quantity;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The printer's status as JSON lines, to be recorded and played back. A line is what one message changed:
 *
 * <pre>{"tick":120,"at_s":1.998764321,"state":"warming","readings":{"bed.actual_C":22.4},"events":{"camera":10},"fault_text":"door open"}</pre>
 *
 * <p>Where printers have names, {@code printer} names the one that the line is about. {@code at_s} is when the message came, {@code tick}
 * the frame that first showed it; both count from the first frame. A handwritten line may omit {@code tick}. User-defined readings are in a
 * separate object, {@code own_readings}. A reading of {@code null} is unknown; an event has the seconds that it still lasts; an empty fault
 * text removes the previous one. Frames that were skipped because their time had passed have their own line:
 *
 * <pre>{"tick":131,"left_out":2}</pre>
 */
public final class StatusLines {
    static final String TICK = "tick";
    static final String AT = "at_s";
    static final String PRINTER = "printer";
    static final String STATE = "state";
    static final String READINGS = "readings";
    static final String OWN_READINGS = "own_readings";
    static final String EVENTS = "events";
    static final String FAULT_TEXT = "fault_text";
    static final String LEFT_OUT = "left_out";

    /** Decimal digits of a second that times are written with. */
    static final int NANO_DIGITS = 9;

    private StatusLines() {}

    /**
     * The content of a line.
     *
     * @param tick the frame that first showed the message, or the first one left out; empty if the line does not say
     * @param atNanos when the message came, in ns since the first frame; 0 if frames were left out
     * @param status the status with the message in it
     * @param leftOut how many frames were left out, from {@code tick} on; 0 in the line of a message
     * @param printer name of the printer that it is about; empty if the line does not say
     */
    public record Entry(Optional<Long> tick, long atNanos, PrinterStatus status, long leftOut, String printer) {
        /**
         * The content of a line about a printer that has no name.
         *
         * @param tick as above
         * @param atNanos as above
         * @param status as above
         * @param leftOut as above
         */
        public Entry(Optional<Long> tick, long atNanos, PrinterStatus status, long leftOut) {
            this(tick, atNanos, status, leftOut, Statuses.UNNAMED);
        }
    }

    /** A line that is not valid. The message says what is wrong with it and what would be valid. */
    public static final class BadLineException extends Exception {
        private static final long serialVersionUID = 1L;

        BadLineException(String what) {
            super(what);
        }
    }

    /**
     * Writes the changes between two times.
     *
     * @param before what is shown up to now
     * @param after what is shown from now on
     * @param tick the frame that first shows it
     * @param startNanos the time of the first frame, on the statuses' clock
     * @return a line for each message that brought a reading, and one for the last message of each printer, in chronological order
     */
    public static List<String> between(Statuses before, Statuses after, long tick, long startNanos) {
        SortedMap<Long, List<String>> lines = new TreeMap<>();
        for (String printer : after.printers()) {
            PrinterStatus one = after.of(printer);
            if (one != before.of(printer)) {
                for (long time : times(before.of(printer), one)) {
                    lines.computeIfAbsent(time, any -> new ArrayList<>())
                            .add(line(printer, before.of(printer), one, time, tick, startNanos));
                }
            }
        }
        return lines.values().stream().flatMap(List::stream).toList();
    }

    private static SortedSet<Long> times(PrinterStatus before, PrinterStatus after) {
        SortedSet<Long> times = new TreeSet<>(List.of(after.heardAtNanos()));
        for (Quantity quantity : Quantity.values()) {
            if (changed(before, after, quantity)) {
                times.add(after.reading(quantity).atNanos());
            }
        }
        for (String name : after.ownNames()) {
            if (ownChanged(before, after, name)) {
                times.add(after.own(name).atNanos());
            }
        }
        return times;
    }

    /**
     * Writes that frames were skipped.
     *
     * @param tick the first of them
     * @param count how many, 1 or more
     * @return a line
     */
    public static String leftOut(long tick, long count) {
        Map<String, Long> line = new LinkedHashMap<>();
        line.put(TICK, tick);
        line.put(LEFT_OUT, count);
        return JsonLine.of(line);
    }

    /**
     * Reads a line.
     *
     * @param line JSON
     * @param before the status up to now
     * @return the status with the line in it, with times in ns since the first frame
     * @throws BadLineException if the line is not valid
     */
    public static Entry read(String line, PrinterStatus before) throws BadLineException {
        return read(line, Statuses.of(before));
    }

    /**
     * Reads a line.
     *
     * @param line JSON
     * @param before what is known up to now
     * @return the status of one printer with the line in it, with times in ns since the first frame
     * @throws BadLineException if the line is not valid
     */
    public static Entry read(String line, Statuses before) throws BadLineException {
        return new StatusLineParser(line).entry(before);
    }

    private static String line(
            String printer, PrinterStatus before, PrinterStatus after, long time, long tick, long startNanos) {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put(TICK, tick);
        if (!printer.isEmpty()) {
            line.put(PRINTER, printer);
        }
        line.put(AT, seconds(time - startNanos));
        boolean last = time == after.heardAtNanos();
        if (last && after.state() != before.state()) {
            line.put(STATE, after.state().word());
        }
        putIfAny(line, READINGS, readings(before, after, time));
        putIfAny(line, OWN_READINGS, ownReadings(before, after, time));
        if (last) {
            putIfAny(line, EVENTS, events(before, after, time));
            if (!after.faultText().equals(before.faultText())) {
                line.put(FAULT_TEXT, after.faultText().orElse(""));
            }
        }
        return JsonLine.of(line);
    }

    private static void putIfAny(Map<String, Object> line, String key, Map<String, ?> entries) {
        if (!entries.isEmpty()) {
            line.put(key, entries);
        }
    }

    private static Map<String, Double> readings(PrinterStatus before, PrinterStatus after, long time) {
        Map<String, Double> readings = new LinkedHashMap<>();
        for (Quantity quantity : Quantity.values()) {
            Reading reading = after.reading(quantity);
            if (changed(before, after, quantity) && reading.atNanos() == time) {
                readings.put(quantity.key(), reading.known() ? reading.value() : null);
            }
        }
        return readings;
    }

    private static Map<String, Double> ownReadings(PrinterStatus before, PrinterStatus after, long time) {
        Map<String, Double> readings = new TreeMap<>();
        for (String name : after.ownNames()) {
            Reading reading = after.own(name);
            if (ownChanged(before, after, name) && reading.atNanos() == time) {
                readings.put(name, reading.known() ? reading.value() : null);
            }
        }
        return readings;
    }

    private static boolean ownChanged(PrinterStatus before, PrinterStatus after, String name) {
        return after.own(name).differsFrom(before.own(name));
    }

    private static Map<String, BigDecimal> events(PrinterStatus before, PrinterStatus after, long time) {
        Map<String, BigDecimal> events = new LinkedHashMap<>();
        after.eventEnds().forEach((name, end) -> {
            if (!end.equals(before.eventEnds().get(name))) {
                events.put(name, seconds(end - time));
            }
        });
        return events;
    }

    private static boolean changed(PrinterStatus before, PrinterStatus after, Quantity quantity) {
        return !after.reading(quantity).equals(before.reading(quantity));
    }

    private static BigDecimal seconds(long nanos) {
        return BigDecimal.valueOf(nanos, NANO_DIGITS).stripTrailingZeros();
    }
}
