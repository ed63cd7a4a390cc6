package dev.lampwright.printer;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;

/** What is known of the printer at one moment. Immutable; each message makes a new one. */
public final class PrinterStatus {
    private static final PrinterStatus NOTHING_HEARD =
            new PrinterStatus(PrinterState.SILENT, false, 0, new EnumMap<>(Quantity.class), Map.of());

    private final PrinterState state;
    private final boolean heard;
    private final long heardAtNanos;
    private final Map<Quantity, Reading> readings;
    private final Map<String, Long> eventEnds;

    private PrinterStatus(
            PrinterState state,
            boolean heard,
            long heardAtNanos,
            Map<Quantity, Reading> readings,
            Map<String, Long> eventEnds) {
        this.state = state;
        this.heard = heard;
        this.heardAtNanos = heardAtNanos;
        this.readings = readings;
        this.eventEnds = eventEnds;
    }

    /**
     * What is known before the first message.
     *
     * @return silent, with no reading known
     */
    public static PrinterStatus nothingHeard() {
        return NOTHING_HEARD;
    }

    /**
     * The state that the printer last told.
     *
     * @return {@link PrinterState#SILENT} until it has told one
     */
    public PrinterState state() {
        return state;
    }

    /**
     * The state as it counts at some time: silent, if nothing has been heard for long.
     *
     * @param nanos the time
     * @param silentAfterNanos how long is long
     * @return the state
     */
    public PrinterState stateAt(long nanos, long silentAfterNanos) {
        return heard && nanos - heardAtNanos <= silentAfterNanos ? state : PrinterState.SILENT;
    }

    /**
     * Whether any message has come that was bound and readable.
     *
     * @return false only before the first
     */
    public boolean heard() {
        return heard;
    }

    /**
     * When the last message came that was bound and readable.
     *
     * @return ns on the daemon's monotonic clock; without meaning unless {@link #heard}
     */
    public long heardAtNanos() {
        return heardAtNanos;
    }

    /**
     * The newest reading of a quantity.
     *
     * @param quantity which
     * @return the reading, {@link Reading#UNKNOWN} if there is none
     */
    public Reading reading(Quantity quantity) {
        return readings.getOrDefault(quantity, Reading.UNKNOWN);
    }

    /**
     * The newest value of a quantity.
     *
     * @param quantity which
     * @return the value, NaN if it is not known
     */
    public double value(Quantity quantity) {
        return reading(quantity).value();
    }

    /**
     * This after a message that was read and told nothing new.
     *
     * @param atNanos when it came
     * @return a new status
     */
    public PrinterStatus heardAt(long atNanos) {
        return new PrinterStatus(state, true, atNanos, readings, eventEnds);
    }

    /**
     * This with a state that has just been told.
     *
     * @param newState what the printer says it is doing
     * @param atNanos when it said so
     * @return a new status
     */
    public PrinterStatus withState(PrinterState newState, long atNanos) {
        return new PrinterStatus(newState, true, atNanos, readings, eventEnds);
    }

    /**
     * This with a reading that has just come.
     *
     * @param quantity what was read
     * @param value its value; NaN if the printer says that it does not know
     * @param atNanos when it came
     * @return a new status
     */
    public PrinterStatus withReading(Quantity quantity, double value, long atNanos) {
        Map<Quantity, Reading> newReadings = new EnumMap<>(readings);
        newReadings.put(quantity, new Reading(value, atNanos));
        return new PrinterStatus(state, true, atNanos, newReadings, eventEnds);
    }

    /**
     * Whether an event is going on.
     *
     * @param name its name in the configuration
     * @param nanos the time
     * @return false also if it has never been told
     */
    public boolean eventAt(String name, long nanos) {
        Long end = eventEnds.get(name);
        return end != null && end - nanos > 0;
    }

    /**
     * This with an event that has just begun or ended.
     *
     * @param name its name in the configuration
     * @param endNanos when it ends, or has ended
     * @param atNanos when the message came
     * @return a new status
     */
    public PrinterStatus withEvent(String name, long endNanos, long atNanos) {
        Map<String, Long> newEnds = new HashMap<>(eventEnds);
        newEnds.put(name, endNanos);
        return new PrinterStatus(state, true, atNanos, readings, newEnds);
    }
}
