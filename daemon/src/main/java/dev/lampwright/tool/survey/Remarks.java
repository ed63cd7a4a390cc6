package dev.lampwright.tool.survey;

import dev.lampwright.broker.OwnTopics;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.toml.TomlText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** What the user must know to judge a proposal, one sentence a line: who else publishes through the broker, and what is missing. */
public final class Remarks {
    private static final List<String> NO_STATE = List.of(
            "not found: a state in words. The readings show what the printer does, but nothing reports a fault",
            "a state that is reported in codes is bound in [printer.state], one in flags by [[printer.condition]], for instance:");

    private static final List<String> NO_FAULT =
            List.of("not heard: a fault. None is shown until you bind what the printer reports then");

    private static final List<String> NO_FAULT_WORD = List.of(
            "not heard: a word for a fault. A fault is shown only if the printer reports it in one of the guessed words");

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
        List<String> remarks = new ArrayList<>();
        List<String> places = proposal.company().places();
        if (!places.isEmpty()) {
            remarks.add("more than one printer: " + String.join(", ", places)
                    + (places.size() == 1 ? " looks" : " look") + " like a printer as well, and only one is bound"
                    + (places.size() < LookAlikes.MOST ? "" : "; there may be more"));
            remarks.add(
                    "to choose another: " + places.stream().map(Remarks::option).collect(Collectors.joining(", or ")));
        }
        proposal.company().mixtures().forEach(mixture -> remarks.add(mixture.told()));
        return remarks;
    }

    /**
     * What was not found, and what follows from that.
     *
     * @param proposal what was found
     * @return a line for the readings and some for the state; none if everything or nothing was found
     */
    public static List<String> missing(Proposal proposal) {
        if (!ProposedConfig.isEnough(proposal)) {
            return List.of();
        }
        List<String> remarks = new ArrayList<>();
        String readings = Arrays.stream(Role.values())
                .filter(role ->
                        role.quantity().isPresent() && proposal.found(role).isEmpty())
                .map(Role::word)
                .collect(Collectors.joining(", "));
        if (!readings.isEmpty()) {
            remarks.add("not found: " + readings);
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
