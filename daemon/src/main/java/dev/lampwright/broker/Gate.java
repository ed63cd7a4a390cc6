package dev.lampwright.broker;

/** When a connection that goes along with a main one may be attempted. */
@FunctionalInterface
interface Gate {
    /**
     * Waits for its turn.
     *
     * @return whether the main connection has lasted since the turn before, so that it did not cause the loss of this one
     * @throws InterruptedException if this thread is to end
     */
    boolean await() throws InterruptedException;
}
