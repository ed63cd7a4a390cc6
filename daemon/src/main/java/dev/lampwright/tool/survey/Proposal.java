package dev.lampwright.tool.survey;

import java.util.List;
import java.util.Optional;

/**
 * What a survey makes of what it has heard.
 *
 * @param rows every value that was heard: those whose role is known first, by role, then the others by topic
 * @param found those whose role is known, by role
 * @param company who else speaks
 * @param messages how many messages came
 * @param leftOut how many values or messages were left out, because there were too many or they were too long
 */
public record Proposal(List<Row> rows, List<Found> found, Company company, long messages, long leftOut) {
    /** Keeps copies of the lists. */
    public Proposal {
        rows = List.copyOf(rows);
        found = List.copyOf(found);
    }

    /**
     * Where something is told.
     *
     * @param role what
     * @return empty if it was not found
     */
    public Optional<Found> found(Role role) {
        return found.stream().filter(one -> one.role() == role).findFirst();
    }
}
