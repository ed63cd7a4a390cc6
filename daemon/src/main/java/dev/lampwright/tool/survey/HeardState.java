package dev.lampwright.tool.survey;

import dev.lampwright.payload.Source;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Optional;

/**
 * Where a printer reports what it is doing, and in what words, to ask a person about the uncertain ones.
 *
 * @param source the place
 * @param words what it reported there, in order of first appearance
 */
public record HeardState(Source source, List<Word> words) {
    /** Keeps a copy. */
    public HeardState {
        words = List.copyOf(words);
    }

    /**
     * A word.
     *
     * @param pattern as a binding names it
     * @param meanwhile what the printer did during that time, the longest first
     * @param state the word of the configuration for the state that it stands for; empty if uncertain
     */
    public record Word(String pattern, List<Phrase> meanwhile, String state) {
        /** Keeps a copy. */
        public Word {
            meanwhile = List.copyOf(meanwhile);
        }
    }

    /**
     * The place that a proposal binds, or else the likeliest of those that reported more than one word.
     *
     * @param proposal what was found
     * @return empty if there is no such place
     */
    public static Optional<HeardState> of(Proposal proposal) {
        return proposal.statePlaces().stream()
                .filter(StatePlace::bound)
                .findFirst()
                .or(() -> proposal.found(Role.STATE).isPresent()
                        ? Optional.empty()
                        : proposal.statePlaces().stream()
                                .filter(place -> place.said().size() > 1)
                                .findFirst())
                .map(place -> new HeardState(
                        place.source(),
                        place.said().stream()
                                .map(said -> new Word(
                                        said.word(),
                                        said.doings(),
                                        said.state().map(PrinterState::word).orElse("")))
                                .toList()));
    }

    /**
     * The place as lines of the configuration.
     *
     * @return TOML, as written below {@code [printer.state]}
     */
    public String place() {
        StringBuilder lines = new StringBuilder();
        ProposedConfig.keys(source)
                .forEach((key, value) ->
                        lines.append(key).append(" = ").append(value).append('\n'));
        return lines.toString();
    }
}
