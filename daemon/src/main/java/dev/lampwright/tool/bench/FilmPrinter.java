package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.printer.Statuses;

/** The printer of one film. */
interface FilmPrinter extends AutoCloseable {
    /** A chain for it, before its first frame. */
    Chain chain(Config config, LightSpec light, int rate);

    /** When the film begins, on the clock of its statuses. */
    long startNanos();

    /**
     * What is known of each printer at a frame.
     *
     * @param chain the chain, which may be given values of signals
     * @param seconds the time of the frame, from the first that is shown; below 0 for those before it
     * @param nanos the same on the clock of the statuses
     * @param patience ends it
     */
    Statuses at(Chain chain, double seconds, long nanos, DrawPatience patience) throws BenchRefusal;

    @Override
    void close() throws BenchRefusal;
}
