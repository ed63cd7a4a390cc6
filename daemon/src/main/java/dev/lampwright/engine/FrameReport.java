package dev.lampwright.engine;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Pressing;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.printer.PrinterState;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One frame, and how many there have been: all as of that frame.
 *
 * @param printers what each printer is doing, at least one; one without a name has an empty one
 * @param current what it draws from the strip's supply
 * @param mostMilliamps the most that any frame has drawn from the strip's supply, in mA, rounded up
 * @param frames how many frames have been made since the start
 * @param skipped how many ticks have been skipped since the start because their time had passed
 * @param dimmedFrames how many frames were sent darker than requested because of a ceiling, since the guards were created: at the start, or
 *     when the lights were last changed
 * @param heldFrames how many frames were held back because they would have flashed too often, since the guards were created
 * @param signals the values of the signals, by their names in the configuration; NaN for unknown
 */
public record FrameReport(
        List<Printer> printers,
        StripCurrent current,
        int mostMilliamps,
        long frames,
        long skipped,
        long dimmedFrames,
        long heldFrames,
        Map<String, Double> signals) {
    /**
     * What one printer is doing.
     *
     * @param name its name; empty if it has none
     * @param state the state that the frame shows; silent before the first frame
     * @param alarm the state of its alarm; normal before the first frame
     * @param faultLasts whether it still has its fault, acknowledged or not
     * @param look name of the look shown for it, as in the configuration; empty before the first frame
     */
    public record Printer(String name, PrinterState state, AlarmState alarm, boolean faultLasts, String look) {}

    /** Keeps copies, in their order. */
    public FrameReport {
        printers = List.copyOf(printers);
        signals = Collections.unmodifiableMap(new LinkedHashMap<>(signals));
    }

    /**
     * The printer that needs attention most: by its alarm, then by its state.
     *
     * @return one of {@link #printers}
     */
    public Printer first() {
        return Collections.min(
                printers, Comparator.comparingInt(printer -> Pressing.rank(printer.alarm(), printer.state())));
    }

    /**
     * The state that it shows.
     *
     * @return that of the {@link #first} printer
     */
    public PrinterState state() {
        return first().state();
    }

    /**
     * The state of the alarm.
     *
     * @return that of the {@link #first} printer
     */
    public AlarmState alarm() {
        return first().alarm();
    }

    /**
     * Whether the printer still has its fault.
     *
     * @return that of the {@link #first} printer
     */
    public boolean faultLasts() {
        return first().faultLasts();
    }

    /**
     * Name of the look that is shown.
     *
     * @return that of the {@link #first} printer
     */
    public String look() {
        return first().look();
    }
}
