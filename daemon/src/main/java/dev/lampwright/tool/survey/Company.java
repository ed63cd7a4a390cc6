package dev.lampwright.tool.survey;

import java.util.List;

/**
 * Who speaks at the broker beside the printer that was found.
 *
 * @param lampwrights the beginnings of the topics of other lampwrights, which are left out
 * @param places topic filters of what looks like a printer as well; none if it cannot be told where one ends and the other begins
 * @param mixtures topics on which several seem to speak, among those where something was found
 */
public record Company(List<String> lampwrights, List<String> places, List<Mixture> mixtures) {
    /** Keeps copies of the lists. */
    public Company {
        lampwrights = List.copyOf(lampwrights);
        places = List.copyOf(places);
        mixtures = List.copyOf(mixtures);
    }
}
