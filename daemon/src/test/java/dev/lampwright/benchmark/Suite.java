package dev.lampwright.benchmark;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/**
 * Runs the benchmarks and prints a table. Time is sampled, because a median is hardly affected by other work on the machine; allocation is
 * counted in a separate run, because sampling allocates.
 */
public final class Suite {
    private static final int FORKS = 3;
    private static final int SAMPLED_S = 4;
    private static final int COUNTED_S = 2;

    private Suite() {}

    /**
     * Runs them.
     *
     * @param args a regular expression for their names; none or an empty one for all. {@code FrameCost} is a separate measurement
     * @throws RunnerException if one fails
     */
    public static void main(String[] args) throws RunnerException, IOException, InterruptedException {
        String wanted = args.length > 0 ? args[0] : "";
        if (wanted.equals(FrameCost.class.getSimpleName())) {
            FrameCost.print();
            return;
        }
        Table table = new Table();
        table.addTimes(
                new Runner(options(wanted, Mode.SampleTime, FORKS, SAMPLED_S).build()).run());
        table.addAllocations(new Runner(options(wanted, Mode.AverageTime, 1, COUNTED_S)
                        .addProfiler(GCProfiler.class)
                        .build())
                .run());
        System.out.println(table);
    }

    private static ChainedOptionsBuilder options(String wanted, Mode mode, int forks, int seconds) {
        return new OptionsBuilder()
                .include("dev\\.lampwright\\.benchmark\\..*" + wanted)
                .mode(mode)
                .timeUnit(TimeUnit.MICROSECONDS)
                .forks(forks)
                .warmupIterations(seconds)
                .warmupTime(TimeValue.seconds(1))
                .measurementIterations(seconds)
                .measurementTime(TimeValue.seconds(1))
                .jvmArgs("-Xmx256m", "-XX:+UseSerialGC", "-Djava.awt.headless=true")
                .shouldFailOnError(true);
    }
}
