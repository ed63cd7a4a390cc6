package dev.lampwright.broker;

import java.util.List;

/**
 * The same topic filters for as long as there is a connection.
 *
 * @param topicFilters what to subscribe to, at least one, all well-formed
 * @param needed whether the connection is of no use if all are refused
 */
record FixedSubscriptions(List<String> topicFilters, boolean needed) implements Subscriptions {
    /** Keeps a copy of the list. */
    FixedSubscriptions {
        topicFilters = List.copyOf(topicFilters);
    }

    @Override
    public List<String> begin(BrokerSession session) throws BrokerException, InterruptedException {
        List<String> refused = session.subscribe(topicFilters);
        if (needed && refused.size() == topicFilters.size()) {
            throw new BrokerException(refusal(refused));
        }
        return refused;
    }

    /** What to tell of subscriptions that are all refused. */
    static String refusal(List<String> refused) {
        return "the broker refuses the subscription to " + String.join(", ", refused) + "; check its access list";
    }
}
