package dev.lampwright.tool.survey;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The name refers to something else: a fan, a room, the weather. It counts as a whole word only. In the value's own name it counts against
 * the value. In a name further out, which may only say where the printer is, it counts only where nothing below it is called a bed or a
 * nozzle, or heats up as a nozzle does.
 */
final class ForeignEvidence implements Evidence {
    /** How much it counts against a value. */
    static final double WEIGHT = 3;

    /** No room, boiler or kitchen gets this hot, in any unit. Common practice, no source. */
    private static final double HOT = 150;

    private final Map<List<List<String>>, Boolean> printers = new HashMap<>();
    private final Collection<Trail> trails;

    /**
     * Prepares.
     *
     * @param trails all values
     */
    ForeignEvidence(Collection<Trail> trails) {
        this.trails = trails;
    }

    @Override
    public Clue weigh(Trail trail, Role role) {
        return isForeign(trail) ? Clue.against(WEIGHT) : Clue.NONE;
    }

    private boolean isForeign(Trail trail) {
        return trail.names().ownSpeaksOf(Concept.FOREIGN) || standsApart(trail);
    }

    /** Whether an outer name refers to something else, and nothing below it to a printer. */
    boolean standsApart(Trail trail) {
        List<List<String>> levels = trail.names().levels();
        for (int i = 0; i < levels.size(); i++) {
            boolean speaks = levels.get(i).stream().anyMatch(Vocabulary.words(Concept.FOREIGN)::contains);
            if (speaks && !printers.computeIfAbsent(levels.subList(0, i + 1), this::isPrinter)) {
                return true;
            }
        }
        return false;
    }

    private boolean isPrinter(List<List<String>> beginning) {
        List<Trail> within = trails.stream()
                .filter(Trail::numeric)
                .filter(trail -> begins(trail.names().levels(), beginning))
                .toList();
        boolean named = within.stream().anyMatch(trail -> isHeaterCalled(trail, beginning.size()));
        return named
                || within.stream()
                        .filter(target -> target.most() >= HOT && target.isLikeATarget())
                        .anyMatch(target -> within.stream()
                                .anyMatch(actual -> actual != target && FollowEvidence.proves(actual, target)));
    }

    private static boolean begins(List<List<String>> levels, List<List<String>> beginning) {
        return levels.size() > beginning.size()
                && levels.subList(0, beginning.size()).equals(beginning);
    }

    private static boolean isHeaterCalled(Trail trail, int from) {
        List<List<String>> levels = trail.names().levels();
        return levels.subList(from, levels.size()).stream()
                .flatMap(List::stream)
                .anyMatch(token -> Vocabulary.words(Concept.BED).contains(token)
                        || Vocabulary.words(Concept.NOZZLE).contains(token));
    }
}
