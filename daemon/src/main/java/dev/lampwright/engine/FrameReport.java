package dev.lampwright.engine;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.printer.PrinterState;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One frame, and how many there have been: all of it as that frame left it.
 *
 * @param state the state that it shows; silent before the first frame
 * @param alarm the state of the alarm; normal before the first frame
 * @param faultLasts whether the printer has its fault still, be it acknowledged or not
 * @param look name of the look that it shows, as the configuration has it; empty before the first frame
 * @param current what it takes from the strip's supply
 * @param mostMilliamps the most that any frame has taken from the strip's supply, in mA, rounded up
 * @param frames how many frames have been made since the start
 * @param skipped how many ticks have been left out since the start because their time was past
 * @param dimmedFrames how many frames left darker than they were asked for because of a ceiling, since the guards were made: at the
 *     start, or when the lights were last changed
 * @param heldFrames how many frames were held back because they would have flashed too often, since the guards were made
 * @param signals what light could follow in it, by the name that the configuration has for each; NaN for unknown
 */
public record FrameReport(
        PrinterState state,
        AlarmState alarm,
        boolean faultLasts,
        String look,
        StripCurrent current,
        int mostMilliamps,
        long frames,
        long skipped,
        long dimmedFrames,
        long heldFrames,
        Map<String, Double> signals) {
    /** Keeps a copy of the map, in its order. */
    public FrameReport {
        signals = Collections.unmodifiableMap(new LinkedHashMap<>(signals));
    }
}
