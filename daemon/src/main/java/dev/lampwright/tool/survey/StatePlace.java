package dev.lampwright.tool.survey;

import dev.lampwright.payload.Source;
import java.util.List;

/**
 * A place that may report the state: everything that it reported, and what the printer did during that time. What the words stand for is
 * uncertain where {@link Said#state} is empty; a person who was there knows.
 *
 * @param source where it is
 * @param said everything that it reported, in order of first appearance
 * @param score the evidence for it; 2.5 is enough to be bound
 * @param bound whether it is the place that the proposal binds
 */
public record StatePlace(Source source, List<Said> said, double score, boolean bound) {
    /** Keeps a copy of the list. */
    public StatePlace {
        said = List.copyOf(said);
    }

    /**
     * What is not certain.
     *
     * @return the words without a state, in the order in which they first came
     */
    public List<Said> open() {
        return said.stream().filter(one -> one.state().isEmpty()).toList();
    }
}
