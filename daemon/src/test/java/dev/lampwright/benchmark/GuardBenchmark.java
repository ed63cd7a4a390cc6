package dev.lampwright.benchmark;

import dev.lampwright.guard.CurrentGuard;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.List;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The current guard alone: 300 pixels and a dimmer. */
@State(Scope.Thread)
public class GuardBenchmark {
    private static final int PIXELS = 300;

    private final Frame asked = Bench.frame(PIXELS);
    private final Frame frame = Bench.frame(PIXELS);
    private final CurrentGuard within = new CurrentGuard(setup(60_000), 60);
    private final CurrentGuard over = new CurrentGuard(setup(2000), 60);

    private static Setup setup(int ceiling) {
        List<Integer> currents = List.of(12_000, 12_000, 12_000);
        List<Setup.Dimmer> dimmers = List.of(new Setup.Dimmer(1, 800, 0));
        return new Setup(PIXELS, "GRB", currents, 1000, 0, 1000, WhenSilent.DARK, List.of(ceiling, 1000), dimmers);
    }

    /**
     * A frame that may pass.
     *
     * @return what it takes, in mA
     */
    @Benchmark
    public int within() {
        frame.copyFrom(asked);
        within.hold(frame);
        return within.milliamps(0);
    }

    /**
     * A frame that is dimmed.
     *
     * @return what it takes, in mA
     */
    @Benchmark
    public int over() {
        frame.copyFrom(asked);
        over.hold(frame);
        return over.milliamps(0);
    }
}
