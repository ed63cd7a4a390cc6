package dev.lampwright.benchmark;

import dev.lampwright.guard.CurrentGuard;
import dev.lampwright.guard.GuardSettings;
import dev.lampwright.guard.Guards;
import dev.lampwright.guard.Ranks;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.List;
import java.util.Map;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The guards alone: 300 pixels and a dimmer. */
@State(Scope.Thread)
public class GuardBenchmark {
    private static final int PIXELS = 300;
    private static final int RATE = 60;

    private final Frame asked = Bench.frame(PIXELS);
    private final Frame frame = Bench.frame(PIXELS);
    private final CurrentGuard within = guard(setup(60_000));
    private final CurrentGuard over = guard(setup(2000));

    private final Guards both = new Guards(setup(60_000), fitting(), GuardSettings.USUAL, RATE);
    private long tick;

    private static CurrentGuard guard(Setup setup) {
        return new CurrentGuard(setup, Ranks.alike(PIXELS, 1), RATE, 2);
    }

    private static Fitting fitting() {
        Map<String, Zone> zones =
                Map.of("strip", Zone.run(0, PIXELS - 1), "bed", Zone.run(0, 149), "nozzle", Zone.run(150, 299));
        return new Fitting(PIXELS, zones, List.of(Fitting.DimmerUse.white("work")));
    }

    private static Setup setup(int ceiling) {
        List<Integer> currents = List.of(12_000, 12_000, 12_000);
        List<Setup.Dimmer> dimmers = List.of(new Setup.Dimmer(1, 800, 0));
        return new Setup(PIXELS, "GRB", currents, 1000, 0, 1000, WhenSilent.DARK, List.of(ceiling, 1000), dimmers);
    }

    /**
     * A frame within the ceiling.
     *
     * @return its current, in mA
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
     * @return its current, in mA
     */
    @Benchmark
    public int over() {
        frame.copyFrom(asked);
        over.hold(frame);
        return over.milliamps(0);
    }

    /**
     * The current guard and the flash guard, for light that may pass.
     *
     * @return its current, in mA
     */
    @Benchmark
    public int both() {
        frame.copyFrom(asked);
        both.hold(frame, tick++ * 1_000_000_000L / RATE);
        return both.milliamps(0);
    }

    /**
     * The same for light that flashes thirty times a second and is held.
     *
     * @return its current, in mA
     */
    @Benchmark
    public int held() {
        if (tick % 2 == 0) {
            frame.copyFrom(asked);
        } else {
            frame.darken();
        }
        both.hold(frame, tick++ * 1_000_000_000L / RATE);
        return both.milliamps(0);
    }
}
