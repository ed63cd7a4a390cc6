package dev.lampwright.survey;

import dev.lampwright.printer.OwnTopics;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What the user must know to judge a proposal, in sentences of a line each: who else speaks at the broker. */
public final class Remarks {
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
                .map(own -> own.status() + ": a lampwright tells there how it does; left out, as are " + own.answer()
                        + " and " + own.ask("…"))
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
                    + (places.size() == 1 ? " looks" : " look") + " like a printer as well, and only one is bound");
            remarks.add(
                    "to choose another: " + places.stream().map(Remarks::option).collect(Collectors.joining(", or ")));
        }
        proposal.company().mixtures().forEach(mixture -> remarks.add(mixture.told()));
        return remarks;
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
