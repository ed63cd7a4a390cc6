package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds faults that are told by a text that is not empty otherwise, or by a code that is the same otherwise. */
final class FaultSigns {
    /** What speaks of a fault that is over, or of many. */
    private static final Set<String> NOT_NOW = Set.of(
            "last",
            "previous",
            "prev",
            "history",
            "log",
            "count",
            "counter",
            "total",
            "rate",
            "time",
            "timestamp",
            "letzte",
            "letzter",
            "anzahl");

    private static final int MOST_AT_REST = 3;
    private static final double SELDOM = 0.1;
    private static final double MOSTLY = 0.7;

    private FaultSigns() {}

    /** Whether a value's name speaks of a fault that is there now. */
    static boolean speaksOfFaultNow(Trail trail) {
        List<String> own = trail.names().own();
        return own.stream().noneMatch(NOT_NOW::contains)
                && (trail.names().ownSpeaksOf(Concept.FAULT) || trail.names().ownSpeaksOf(Concept.FAULTY));
    }

    /**
     * Looks at a value that is no flag.
     *
     * @param trail what was seen of it
     * @param all what it said, and what the printer did meanwhile
     * @return what shows a fault; empty if its name speaks of none, or if it says things that are none
     */
    static Optional<FoundCondition> of(Trail trail, List<Said> all) {
        boolean isCode = trail.numeric() && trail.whole();
        if (!speaksOfFaultNow(trail) || all.isEmpty() || (trail.numeric() && !isCode)) {
            return Optional.empty();
        }
        List<String> rest = all.stream()
                .filter(said -> all.size() == 1 || isAtRest(said))
                .map(Said::word)
                .toList();
        boolean othersAreFaults = all.stream()
                .filter(said -> !rest.contains(said.word()))
                .allMatch(said -> said.seconds(Doing.STANDING) >= MOSTLY * said.clear());
        if (rest.isEmpty() || rest.size() > MOST_AT_REST || !othersAreFaults) {
            return Optional.empty();
        }
        List<String> not = rest.stream().filter(word -> !isEmpty(word)).toList();
        String reason = "“" + String.join(" ", trail.names().own()) + "” speaks of it"
                + (all.size() > rest.size() ? "" : ", but it has never said anything else");
        return Optional.of(new FoundCondition(
                PrinterState.FAULT, trail.source(), not.isEmpty() ? List.of("*") : List.of(), not, List.of(reason)));
    }

    private static boolean isEmpty(String word) {
        return word.isBlank() || word.equals("null");
    }

    /** What is said while the job goes on is no fault. */
    private static boolean isAtRest(Said said) {
        return isEmpty(said.word()) || said.seconds(Doing.ADVANCING) > SELDOM * said.clear();
    }
}
