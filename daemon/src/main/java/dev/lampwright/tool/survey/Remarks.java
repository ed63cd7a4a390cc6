package dev.lampwright.tool.survey;

import dev.lampwright.broker.OwnTopics;
import dev.lampwright.printer.PrinterState;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** What the user must know to judge a proposal, in sentences of a line each: who else speaks at the broker, and what is missing. */
public final class Remarks {
    private static final List<String> NO_STATE = List.of(
            "not found: a state in words. So the readings have to show what the printer does, and nothing reports a fault",
            "a state that is reported as flags or code numbers has to be bound by hand, in [printer.state]");

    private static final List<String> NO_FAULT_WORD = List.of(
            "not heard: a word for a fault. A fault is shown only if it is reported in one of the words that are guessed");

    private Remarks() {}

    /**
     * The lampwrights that speak at the broker.
     *
     * @param proposal what was heard
     * @return a line for each
     */
    public static List<String> lampwrights(Proposal proposal) {
        return proposal.company().lampwrights().stream()
                .map(OwnTopics::new)
                .map(own -> own.status() + ": a lampwright reports its own status there; left out, as are "
                        + own.answer() + " and " + own.ask("…"))
                .toList();
    }

    /**
     * What else looks like a printer, and how to choose; and topics on which several speak.
     *
     * @param proposal what was found
     * @return none if all that was found is one printer's, as far as can be told
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
     * @return a line for the readings and some for the state; none if all was found, or nothing
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
        remarks.addAll(proposal.found(Role.STATE)
                .map(state -> hasFault(state) ? List.<String>of() : NO_FAULT_WORD)
                .orElse(NO_STATE));
        return remarks;
    }

    private static boolean hasFault(Found state) {
        return StateWords.of(state.words(), state.meanings()).known().containsKey(PrinterState.FAULT);
    }

    /** A doubt, marked as one. */
    static String doubt(String doubt) {
        return "in doubt: " + doubt;
    }

    /** Quoted for a shell, as POSIX.1-2017, Shell Command Language, section 2.2.2, has it. */
    private static String option(String filter) {
        return "--topics '" + filter.replace("'", "'\\''") + "'";
    }
}
