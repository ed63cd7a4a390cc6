package dev.lampwright.tool.survey;

import dev.lampwright.payload.Source;
import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Optional;

/**
 * Where a printer says what it is doing, and in what words, for whoever asks a person about those that are in doubt.
 *
 * @param source the place
 * @param words what it said there, in the order in which it first came
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
     * @param meanwhile what the printer did meanwhile, for the user
     * @param state the word of the configuration for the state that it stands for; empty if that is in doubt
     */
    public record Word(String pattern, String meanwhile, String state) {}

    /**
     * The place that a proposal binds, else the likeliest of those that said more than one word.
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
                                        said.meanwhile(),
                                        said.state().map(PrinterState::word).orElse("")))
                                .toList()));
    }

    /**
     * The place as lines of the configuration.
     *
     * @return TOML, as it stands below {@code [printer.state]}
     */
    public String place() {
        StringBuilder lines = new StringBuilder();
        ProposedConfig.keys(source)
                .forEach((key, value) ->
                        lines.append(key).append(" = ").append(value).append('\n'));
        return lines.toString();
    }
}
