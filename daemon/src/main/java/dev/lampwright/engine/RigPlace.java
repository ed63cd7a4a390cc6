package dev.lampwright.engine;

import dev.lampwright.broker.Brokers;
import dev.lampwright.broker.Patience;
import dev.lampwright.upkeep.Hands;

/**
 * The place of a daemon among those of its process.
 *
 * @param phase where in a tick its frames are
 * @param brokers how it gets to its broker
 * @param hands who does its repeated work, apart from frames and the serial line
 */
public record RigPlace(Phase phase, Brokers brokers, Hands hands) {
    /** For a daemon that is alone. */
    public static final RigPlace ALONE =
            new RigPlace(Phase.AT_ONCE, Brokers.eachItsOwn(Patience.USUAL), Hands.ofItsOwn());
}
