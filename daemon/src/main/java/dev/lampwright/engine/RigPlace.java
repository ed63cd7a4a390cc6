package dev.lampwright.engine;

import dev.lampwright.broker.Brokers;
import dev.lampwright.broker.Patience;

/**
 * The place of a daemon among those of its process.
 *
 * @param phase where in a tick its frames are
 * @param brokers how it gets to its broker
 */
public record RigPlace(Phase phase, Brokers brokers) {
    /** For a daemon that is alone. */
    public static final RigPlace ALONE = new RigPlace(Phase.AT_ONCE, Brokers.eachItsOwn(Patience.USUAL));
}
