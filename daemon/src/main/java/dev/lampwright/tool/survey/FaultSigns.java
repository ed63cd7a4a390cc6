package dev.lampwright.tool.survey;

import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds faults that a printer reports by a text that is otherwise empty, or by a code that is otherwise always the same. */
final class FaultSigns {
    /** Words in a name that mean a past fault, or several. */
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

    /** Whether a value's name suggests a current fault. */
    static boolean speaksOfFaultNow(Trail trail) {
        List<String> own = trail.names().own();
        return own.stream().noneMatch(NOT_NOW::contains)
                && (trail.names().ownSpeaksOf(Concept.FAULT) || trail.names().ownSpeaksOf(Concept.FAULTY));
    }

    /**
     * Looks at a value that is not a flag.
     *
     * @param trail what was seen of it
     * @param all what the value was, and what the printer did during that time
     * @return what shows a fault; empty if its name does not suggest one, or if some of its values are not faults
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

    /** A word that comes while the job is running does not mean a fault. */
    private static boolean isAtRest(Said said) {
        return isEmpty(said.word()) || said.seconds(Doing.ADVANCING) > SELDOM * said.clear();
    }
}
