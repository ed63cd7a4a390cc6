package dev.lampwright.config;

import dev.lampwright.broker.Broker;
import dev.lampwright.printer.Bindings;

/**
 * What is said over the broker. Where this is the same in another configuration, the connection stays.
 *
 * @param broker where the broker is
 * @param bindings where the printer reports what
 * @param prefix beginning of the daemon's own topics, without a slash at its end
 */
public record TalkSpec(Broker broker, Bindings bindings, String prefix) {
    /** The prefix if none is configured. */
    public static final String USUAL_PREFIX = "lampwright";
}
