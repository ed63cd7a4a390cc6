package dev.lampwright.benchmark;

import dev.lampwright.config.Config;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** From status and time to the last byte on the wire: 300 pixels, eight layers. */
@State(Scope.Thread)
public class FrameBenchmark {
    private Bench bench;

    /** Selects the look of eight layers. */
    @Setup
    public void putOn() {
        Config config = Bench.config();
        bench = new Bench(config, config.light());
    }

    /**
     * One frame.
     *
     * @return bytes on the wire
     */
    @Benchmark
    public int eightLayers() {
        return bench.next();
    }
}
