package dev.lampwright.benchmark;

import dev.lampwright.config.Config;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The same path for each built-in look. */
@State(Scope.Thread)
public class LookBenchmark {
    /** Which look. */
    @Param({"silent", "idle", "warming", "printing", "held", "done", "stopped", "fault"})
    public String name;

    private Bench bench;

    /** Puts the look on. */
    @Setup
    public void putOn() {
        Config config = Bench.config();
        bench = new Bench(config, config.light().showing(config.looks().get(name)));
    }

    /**
     * One frame.
     *
     * @return bytes on the wire
     */
    @Benchmark
    public int look() {
        return bench.next();
    }
}
