package dev.lampwright.config;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Condition;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.cue.Easing;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** The section {@code [[cues]]}. */
final class CuesSection {
    private static final Map<String, Easing> EASINGS = Words.of(Easing.values(), Easing::word);
    private static final String FOR_SIGNALS = "signal";
    private static final Map<String, String> GOES_WITH =
            Map.of("above", FOR_SIGNALS, "below", FOR_SIGNALS, "margin", FOR_SIGNALS);
    private static final double LARGEST = 1e9;
    private static final double LONGEST_FADE_S = 600;
    private static final double USUAL_FADE_S = 1.5;

    private final Map<String, LookSpec> looks;
    private final Map<String, String> events;

    /**
     * Prepares to read cues.
     *
     * @param looks the looks by name
     * @param events names of the printer's events
     */
    CuesSection(Map<String, LookSpec> looks, Set<String> events) {
        this.looks = looks;
        this.events = events.stream().collect(Collectors.toMap(name -> name, name -> name));
    }

    /**
     * Reads the section.
     *
     * @param tables the cues
     * @return them, without those whose look is wrong
     */
    List<CueSpec> read(List<Table> tables) {
        List<CueSpec> cues = new ArrayList<>();
        for (int i = 0; i < tables.size(); i++) {
            cue(tables.get(i), i == tables.size() - 1).ifPresent(cues::add);
        }
        return cues;
    }

    private Optional<CueSpec> cue(Table table, boolean last) {
        if (!table.has("look")) {
            table.mistake("look", "is missing", "give the name of the look that the cue puts on");
        }
        Optional<LookSpec> look = table.named("look", "look", looks);
        List<PrinterState> states = table.allNamed("state", "state", StateSection.STATES);
        List<AlarmState> alarms = table.allNamed("alarm", "alarm", AlarmSection.STATES);
        double fadeS = fadeSeconds(table, states.contains(PrinterState.FAULT) || alarms.contains(AlarmState.ALERT));
        List<Condition> conditions = conditions(table, states, alarms);
        Easing easing = table.oneOf("easing", EASINGS).orElse(Easing.EASE_IN_OUT);
        table.noteUseless(GOES_WITH);
        if (conditions.isEmpty() && !last && table.right()) {
            table.mistake(
                    "look",
                    "is always on, so that the cues below never are",
                    "give a state, an alarm, a signal or an event");
        }
        return look.map(found -> new CueSpec(found, conditions, fadeS, easing));
    }

    private List<Condition> conditions(Table table, List<PrinterState> states, List<AlarmState> alarms) {
        List<Condition> conditions = new ArrayList<>();
        if (!states.isEmpty()) {
            conditions.add(new Condition.InState(EnumSet.copyOf(states)));
        }
        if (!alarms.isEmpty()) {
            conditions.add(new Condition.InAlarm(EnumSet.copyOf(alarms)));
        }
        Optional<Signal> signal = table.named("signal", "signal", FollowKeys.SIGNALS);
        if (table.has("signal")) {
            conditions.add(bounds(table, signal.orElse(Signal.JOB_PROGRESS)));
        }
        table.named("event", "event", events).ifPresent(event -> conditions.add(new Condition.DuringEvent(event)));
        return conditions;
    }

    private static Condition bounds(Table table, Signal signal) {
        OptionalDouble above = table.numberIfThere("above", -LARGEST, LARGEST);
        OptionalDouble below = table.numberIfThere("below", -LARGEST, LARGEST);
        double margin = table.numberIfThere("margin", 0, LARGEST).orElse(0);
        if (above.isEmpty() && below.isEmpty() && table.right()) {
            table.mistake("signal", "has neither above nor below beside it", "give one of them, or both");
        }
        double least = above.orElse(Double.NEGATIVE_INFINITY);
        double most = below.orElse(Double.POSITIVE_INFINITY);
        if (least >= most) {
            table.mistake("below", "is not more than above, so that the cue never holds", "give a larger number");
        }
        return new Condition.WithinBounds(signal, least, most, margin);
    }

    private static double fadeSeconds(Table table, boolean fault) {
        OptionalDouble fadeS = table.numberIfThere("fade_s", 0, LONGEST_FADE_S);
        if (fault && fadeS.orElse(0) != 0) {
            table.mistake(
                    "fade_s",
                    "is " + Wording.number(fadeS.getAsDouble()) + ", but a fault cuts in at once",
                    "remove it, and give other states a cue of their own");
        }
        return fault ? 0 : fadeS.orElse(USUAL_FADE_S);
    }
}
