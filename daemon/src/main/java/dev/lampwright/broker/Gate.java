package dev.lampwright.broker;

/** How things stand with the main connection to a broker, for another that goes along with it. */
@FunctionalInterface
interface Gate {
    /**
     * Looks at it, before each attempt of the other.
     *
     * @return whether the main connection has lasted since the look before, so that it did not cause the loss of the other
     */
    boolean look();
}
