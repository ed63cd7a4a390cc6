package dev.lampwright.tool.survey;

import java.util.List;
import java.util.Optional;

/**
 * What a survey concludes from what it has heard.
 *
 * @param rows every value that was heard: those whose role is known first, by role, then the others by topic
 * @param found those whose role is known, by role
 * @param own further heaters, and numbers that Lampwright has no name for
 * @param statePlaces every place that may report the state, the likeliest first: what it reported, and what the printer did during that
 *     time
 * @param conditions flags, codes and texts that show a state by themselves, in the order in which they count
 * @param company who else publishes
 * @param messages how many messages came
 * @param leftOut how many values or messages were left out, because there were too many or they were too long
 */
public record Proposal(
        List<Row> rows,
        List<Found> found,
        Own own,
        List<StatePlace> statePlaces,
        List<FoundCondition> conditions,
        Company company,
        long messages,
        long leftOut) {
    /** Keeps copies of the lists. */
    public Proposal {
        rows = List.copyOf(rows);
        found = List.copyOf(found);
        statePlaces = List.copyOf(statePlaces);
        conditions = List.copyOf(conditions);
    }

    /**
     * Where something is reported.
     *
     * @param role what
     * @return empty if it was not found
     */
    public Optional<Found> found(Role role) {
        return found.stream().filter(one -> one.role() == role).findFirst();
    }

    /**
     * What was heard of one value, for a table.
     *
     * @param topic its topic
     * @param place where it is in the payload
     * @param count how often it came
     * @param perSecond how often a second; 0 if it came only once
     * @param range the smallest and the largest number, or the different words; shortened
     * @param last the newest value
     * @param found what it is, if that is known
     * @param own what it is proposed as, if Lampwright has no name for it
     */
    public record Row(
            String topic,
            String place,
            long count,
            double perSecond,
            String range,
            String last,
            Optional<Found> found,
            Optional<FoundOwn> own) {
        /**
         * What it looks like.
         *
         * @return the name in the configuration, with a question mark if that is uncertain; empty if nothing is known
         */
        public String looksLike() {
            return found.map(Found::role)
                    .map(Role::word)
                    .or(() -> own.map(one -> one.key() + (one.certain() ? "" : "?")))
                    .orElse("");
        }
    }

    /**
     * Readings without a role in Lampwright.
     *
     * @param found heaters first, each with its temperature and its target, then numbers; within each the certain ones first
     * @param more how many more numbers there are
     */
    public record Own(List<FoundOwn> found, int more) {
        /** The maximum number proposed. */
        static final int MOST = 12;

        /** Keeps a copy of the list. */
        public Own {
            found = List.copyOf(found);
        }
    }

    /**
     * Who publishes through the broker besides the printer that was found.
     *
     * @param lampwrights the topic prefixes of other lampwrights, which are left out
     * @param places topic filters of what also looks like a printer; none if it is not clear where one ends and the next begins
     * @param mixtures topics on which several seem to publish, among those where something was found
     */
    public record Company(List<String> lampwrights, List<String> places, List<Mixture> mixtures) {
        /** Keeps copies of the lists. */
        public Company {
            lampwrights = List.copyOf(lampwrights);
            places = List.copyOf(places);
            mixtures = List.copyOf(mixtures);
        }
    }
}
