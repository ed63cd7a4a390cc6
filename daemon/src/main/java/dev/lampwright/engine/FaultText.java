package dev.lampwright.engine;

import dev.lampwright.cue.AlarmState;
import java.util.Optional;

/** What the printer said about its fault, for as long as the alarm is on: it may take its words back before anybody has read them. */
final class FaultText {
    private String last = "";

    /**
     * What is to be told.
     *
     * @param alarm where the alarm stands
     * @param told what the printer says now
     * @return the last that it said since the alarm came on; empty if it said nothing, or there is no alarm
     */
    synchronized String during(AlarmState alarm, Optional<String> told) {
        last = alarm == AlarmState.NORMAL ? "" : told.orElse(last);
        return last;
    }
}
