package dev.lampwright.benchmark;

import com.sun.management.ThreadMXBean;
import dev.lampwright.config.Config;
import java.lang.management.ManagementFactory;
import java.util.Arrays;

/** The cost of a frame when nothing else happens in between: the whole, without the flash limit, and the layers with Java2D, in turn. */
final class HotLoop {
    private static final int WARM_UP = 40;
    private static final int BATCHES = 60;
    private static final int FRAMES = 300;
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private HotLoop() {}

    /**
     * Prints three medians in µs and the bytes that a whole frame allocates.
     *
     * @param args none
     */
    public static void main(String[] args) {
        Config config = Bench.config();
        Bench whole = new Bench(config, config.light());
        Bench unlimited = new Bench(
                config, config.light().guardedBy(config.light().guard().withFlashing()));
        Java2dBenchmark java2d = new Java2dBenchmark();
        Runnable[] ways = {whole::next, unlimited::next, java2d::eightLayers};
        double[][] micros = new double[ways.length][BATCHES];
        for (int batch = -WARM_UP; batch < BATCHES; batch++) {
            for (int way = 0; way < ways.length; way++) {
                double took = batch(ways[way]);
                if (batch >= 0) {
                    micros[way][batch] = took;
                }
            }
        }
        System.out.println(
                median(micros[0]) + " " + median(micros[1]) + " " + median(micros[2]) + " " + allocated(whole));
    }

    private static double batch(Runnable way) {
        long before = THREADS.getCurrentThreadCpuTime();
        for (int i = 0; i < FRAMES; i++) {
            way.run();
        }
        return (THREADS.getCurrentThreadCpuTime() - before) / 1e3 / FRAMES;
    }

    private static double allocated(Bench whole) {
        long thread = Thread.currentThread().getId();
        long before = THREADS.getThreadAllocatedBytes(thread);
        for (int i = 0; i < FRAMES; i++) {
            whole.next();
        }
        return Math.floor((THREADS.getThreadAllocatedBytes(thread) - before) / (double) FRAMES);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
