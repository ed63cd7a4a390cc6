package dev.lampwright.tool.survey;

import dev.lampwright.broker.OwnTopics;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.toml.TomlText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** What the user must know to judge a proposal, one sentence a line: who else publishes through the broker, and what is missing. */
public final class Remarks {
    private static final List<Phrase> NO_STATE = List.of(
            Phrase.of(
                    "heard_no_state",
                    "not found: a state in words. The readings show what the printer does, but nothing reports a fault"),
            Phrase.of(
                    "heard_state_by_hand",
                    "a state that is reported in codes is bound in [printer.state], one in flags by [[printer.condition]], for instance:"));

    private static final List<Phrase> NO_FAULT = List.of(Phrase.of(
            "heard_no_fault", "not heard: a fault. None is shown until you bind what the printer reports then"));

    private static final List<Phrase> NO_FAULT_WORD = List.of(
            Phrase.of(
                    "heard_no_fault_word",
                    "not heard: a word for a fault. A fault is shown only if the printer reports it in one of the guessed words"));

    private Remarks() {}

    /**
     * The lampwrights that report through the broker.
     *
     * @param proposal what was heard
     * @return a line for each
     */
    public static List<String> lampwrights(Proposal proposal) {
        return proposal.company().lampwrights().stream()
                .map(OwnTopics::new)
                .map(own -> own.status() + ": another lampwright reports its status there; left out, as are "
                        + own.answer() + " and " + own.ask("…"))
                .toList();
    }

    /**
     * What else looks like a printer, and how to choose; and topics on which several publish.
     *
     * @param proposal what was found
     * @return none if everything that was found belongs to one printer, as far as is known
     */
    public static List<String> company(Proposal proposal) {
        return Phrase.english(others(proposal));
    }

    /** The same with codes. */
    static List<Phrase> others(Proposal proposal) {
        List<Phrase> remarks = new ArrayList<>();
        List<String> places = proposal.company().places();
        if (!places.isEmpty()) {
            String all = String.join(", ", places);
            remarks.add(Phrase.of(
                    "heard_more_printers",
                    "more than one printer: " + all + (places.size() == 1 ? " looks" : " look")
                            + " like a printer as well, and only one is bound"
                            + (places.size() < LookAlikes.MOST ? "" : "; there may be more"),
                    "places",
                    all));
            remarks.add(Phrase.of(
                    "heard_choose",
                    "to choose another: " + places.stream().map(Remarks::option).collect(Collectors.joining(", or "))));
        }
        proposal.company()
                .mixtures()
                .forEach(mixture -> remarks.add(Phrase.of("heard_mixture", mixture.told(), "topic", mixture.topic())));
        return remarks;
    }

    /**
     * What was not found, and what follows from that.
     *
     * @param proposal what was found
     * @return a line for the readings and some for the state; none if everything or nothing was found
     */
    public static List<String> missing(Proposal proposal) {
        return Phrase.english(lacking(proposal));
    }

    /** The same with codes. */
    static List<Phrase> lacking(Proposal proposal) {
        if (!ProposedConfig.isEnough(proposal)) {
            return List.of();
        }
        List<Phrase> remarks = new ArrayList<>();
        List<Phrase> readings = Arrays.stream(Role.values())
                .filter(role ->
                        role.quantity().isPresent() && proposal.found(role).isEmpty())
                .map(Role::phrase)
                .toList();
        if (!readings.isEmpty()) {
            remarks.add(Phrase.of(
                    "heard_missing", "not found: " + String.join(", ", Phrase.english(readings)), "what", readings));
        }
        boolean hasState = proposal.found(Role.STATE).isPresent();
        if (!hasState && proposal.conditions().isEmpty()) {
            remarks.addAll(NO_STATE);
        } else if (!hasFault(proposal)) {
            remarks.addAll(hasState && isGuessed(proposal.found(Role.STATE).get()) ? NO_FAULT_WORD : NO_FAULT);
        }
        return remarks;
    }

    private static boolean hasFault(Proposal proposal) {
        return proposal.conditions().stream().anyMatch(condition -> condition.state() == PrinterState.FAULT)
                || proposal.found(Role.STATE)
                        .filter(state -> state.meanings().containsValue(PrinterState.FAULT))
                        .isPresent();
    }

    private static boolean isGuessed(Found state) {
        StateWords words = StateWords.of(state.words(), state.meanings());
        return GuessedWords.of(state.words(), words).containsKey(PrinterState.FAULT);
    }

    /**
     * What the printer reported at the state's place and what is not bound: a person must say what it means.
     *
     * @param proposal what was found
     * @return a line for each word
     */
    public static List<String> open(Proposal proposal) {
        return proposal.statePlaces().stream()
                .filter(StatePlace::bound)
                .flatMap(place -> place.open().stream())
                .map(said ->
                        TomlText.quoted(said.word()) + " is not bound to a state. While it was reported, the printer "
                                + said.meanwhile() + "; "
                                + (said.isStandstill()
                                        ? "a pause or a fault: put it into held or fault"
                                        : "put it where it belongs"))
                .toList();
    }

    /** A doubt, marked as one. */
    static String doubt(String doubt) {
        return "in doubt: " + doubt;
    }

    /** Quoted for a shell; POSIX.1-2017, Shell Command Language, section 2.2.2. */
    private static String option(String filter) {
        return "--topics '" + filter.replace("'", "'\\''") + "'";
    }
}
