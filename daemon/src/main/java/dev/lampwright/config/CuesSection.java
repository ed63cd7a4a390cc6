package dev.lampwright.config;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Condition;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.cue.Easing;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The section {@code [[cues]]}. */
final class CuesSection {
    private static final Map<String, Easing> EASINGS = Words.of(Easing.values(), Easing::word);
    private static final String FOR_SIGNALS = "signal";
    private static final double LARGEST = 1e9;
    private static final double USUAL_FADE_S = 1.5;
    private static final Key<Double> ABOVE = Key.number("above", -LARGEST, LARGEST)
            .with(FOR_SIGNALS)
            .example("40", "holds while the signal is above this");
    private static final Key<Double> BELOW = Key.number("below", -LARGEST, LARGEST)
            .with(FOR_SIGNALS)
            .comment("200", "holds while the signal is below this");
    private static final Key<Double> MARGIN = Key.number("margin", 0, LARGEST)
            .otherwise(0.0, "0")
            .with(FOR_SIGNALS)
            .example("2", "how far it may slip back");
    private static final Key<Double> FADE = Key.number("fade_s", 0, 600)
            .without("1.5; a fault cuts in at once")
            .example("1.5", "how long the change takes");
    private static final Key<Easing> EASING = Key.word("easing", EASINGS)
            .otherwise(Easing.EASE_IN_OUT, Easing.EASE_IN_OUT.word())
            .example("\"ease-in-out\"", "how the change runs");

    /** A cue. */
    static final Section SECTION = Section.of(
            "cues",
            "which look is on when: the first that holds wins, the built-in ones come last; all that a cue names must"
                    + " hold",
            Key.own("look", "name of a look or a swatch")
                    .of("look")
                    .needed()
                    .example("\"preheat\"", "the look to show"),
            Key.own("state", "a state, or several in an array; one of `printers` by its name: `alder.warming`")
                    .of("state")
                    .example("\"warming\"", "what the printer is doing"),
            Key.own("any", "a state, or several in an array")
                    .of("state")
                    .comment("\"printing\"", "what at least one of several printers is doing"),
            Key.own("all", "a state, or several in an array")
                    .of("state")
                    .comment("[\"idle\", \"silent\"]", "what every one of several printers is doing"),
            Key.own("alarm", '`' + String.join("`, `", AlarmSection.STATES.keySet()) + "`, or several in an array")
                    .of("alarm")
                    .comment("\"alert\"", "where the alarm of a fault is"),
            Key.own("signal", "a signal").of("signal").example("\"nozzle.actual_C\"", "with above, below or both"),
            ABOVE,
            BELOW,
            MARGIN,
            Key.own("event", "name of an event of the printer").of("event").comment("\"camera\"", "while it lasts"),
            Key.own("view", "name of a view")
                    .of("view")
                    .without("every view")
                    .comment("\"alder\"", "the one that the cue is for"),
            FADE,
            EASING);

    private final LookNames looks;
    private final Map<String, String> events;
    private final Map<String, Condition> states;
    private final Map<String, String> views;

    /**
     * Prepares to read cues.
     *
     * @param looks the looks that a cue may name
     * @param events names of the printers' events
     * @param printers names of the printers, if they have names
     * @param views names of the views
     */
    CuesSection(LookNames looks, Set<String> events, List<String> printers, List<String> views) {
        this.looks = looks;
        this.events = byName(events);
        this.views = byName(views);
        states = states(printers);
    }

    private static Map<String, String> byName(Collection<String> names) {
        return names.stream().collect(Collectors.toMap(name -> name, name -> name, (one, same) -> one));
    }

    /** The condition for each state that a cue may name, those of single printers after the others. */
    private static Map<String, Condition> states(List<String> printers) {
        Map<String, Condition> states = new LinkedHashMap<>();
        StateSection.STATES.forEach((word, state) -> states.put(word, new Condition.InState(Set.of(state))));
        for (int i = 0; i < printers.size(); i++) {
            int which = i;
            StateSection.STATES.forEach((word, state) ->
                    states.put(printers.get(which) + '.' + word, new Condition.PrinterIn(which, Set.of(state))));
        }
        return states;
    }

    /**
     * Reads the section.
     *
     * @param tables the cues
     * @return the cues, without those whose look is wrong
     */
    List<CueSpec> read(List<Table> tables) {
        List<CueSpec> cues = new ArrayList<>();
        for (int i = 0; i < tables.size(); i++) {
            cue(tables.get(i), i == tables.size() - 1).ifPresent(cues::add);
        }
        return cues;
    }

    private Optional<CueSpec> cue(Table table, boolean last) {
        if (!table.as(SECTION).has("look")) {
            table.mistake(
                    "look", new MistakeText("missing", "is missing", "give the name of the look that the cue puts on"));
        }
        Optional<LookSpec> look = looks.named(table, "look");
        List<Condition> named = table.allNamed("state", "state", states);
        List<AlarmState> alarms = table.allNamed("alarm", "alarm", AlarmSection.STATES);
        List<Condition> conditions = conditions(table, named, alarms);
        double fadeS = fadeSeconds(table, conditions.stream().anyMatch(CuesSection::isOfFault));
        Easing easing = table.get(EASING);
        table.noteUseless();
        if (conditions.isEmpty() && !last && table.right()) {
            table.mistake(
                    "look",
                    new MistakeText(
                            "always_on",
                            "is always on, so that the cues below never are",
                            "give a state, an alarm, a signal or an event"));
        }
        return look.map(found -> new CueSpec(found, conditions, fadeS, easing));
    }

    private static boolean isOfFault(Condition condition) {
        return condition instanceof Condition.InAlarm alarm
                ? alarm.alarms().contains(AlarmState.ALERT)
                : condition.states().contains(PrinterState.FAULT);
    }

    private List<Condition> conditions(Table table, List<Condition> named, List<AlarmState> alarms) {
        List<Condition> conditions = new ArrayList<>();
        if (!named.isEmpty()) {
            conditions.add(Condition.OneOf.of(named));
        }
        List<PrinterState> any = table.allNamed("any", "state", StateSection.STATES);
        if (!any.isEmpty()) {
            conditions.add(new Condition.AnyIn(EnumSet.copyOf(any)));
        }
        List<PrinterState> all = table.allNamed("all", "state", StateSection.STATES);
        if (!all.isEmpty()) {
            conditions.add(new Condition.AllIn(EnumSet.copyOf(all)));
        }
        table.named("view", "view", views).ifPresent(view -> conditions.add(new Condition.InView(view)));
        if (!alarms.isEmpty()) {
            conditions.add(new Condition.InAlarm(EnumSet.copyOf(alarms)));
        }
        Optional<Signal> signal = table.named("signal", "signal", table.signals());
        if (table.has("signal")) {
            conditions.add(bounds(table, signal.orElse(Signal.JOB_PROGRESS)));
        }
        table.named("event", "event", events).ifPresent(event -> conditions.add(new Condition.DuringEvent(event)));
        return conditions;
    }

    private static Condition bounds(Table table, Signal signal) {
        Optional<Double> above = table.find(ABOVE);
        Optional<Double> below = table.find(BELOW);
        double margin = table.get(MARGIN);
        if (above.isEmpty() && below.isEmpty() && table.right()) {
            table.mistake(
                    "signal", new MistakeText("no_bound", "needs above, below or both", "give one of them, or both"));
        }
        double least = above.orElse(Double.NEGATIVE_INFINITY);
        double most = below.orElse(Double.POSITIVE_INFINITY);
        if (least >= most) {
            table.mistake(
                    "below",
                    new MistakeText(
                            "never_holds",
                            "is not more than above, so that the cue never holds",
                            "give a larger number"));
        }
        return new Condition.WithinBounds(signal, least, most, margin);
    }

    private static double fadeSeconds(Table table, boolean fault) {
        Optional<Double> fadeS = table.find(FADE);
        if (fault && fadeS.orElse(0.0) != 0) {
            table.mistake(
                    "fade_s",
                    new MistakeText(
                                    "fault_fades",
                                    "is " + Wording.number(fadeS.get()) + ", but a fault cuts in at once",
                                    "remove it, and give other states a cue of their own")
                            .with("value", fadeS.get()));
        }
        return fault ? 0 : fadeS.orElse(USUAL_FADE_S);
    }
}
