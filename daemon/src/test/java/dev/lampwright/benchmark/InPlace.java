package dev.lampwright.benchmark;

import com.sun.management.OperatingSystemMXBean;
import dev.lampwright.config.Config;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.engine.Daemon;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** The cost of a frame in the daemon, sixty times a second, with an in-memory controller and a broker that does not answer. */
final class InPlace {
    /** Light in which every layer moves that can. */
    static final String MOVING = "eight";
    /** Light that is the same from frame to frame. */
    static final String STILL = "still";

    private static final long WARM_UP_MS = 8000;
    private static final long MEASURED_MS = 12_000;

    private InPlace() {}

    /**
     * Prints the processor time per frame in µs, that of the process as a percentage of a core, and its resident memory in MiB.
     *
     * @param args {@link #MOVING} or {@link #STILL}
     */
    public static void main(String[] args) throws InterruptedException, IOException {
        Config config = Bench.config(args[0]);
        MemoryController board = new MemoryController(MemoryController.BOARD, (light, sequence, frame, nanos) -> {});
        int baud = config.controller().baud();
        try (Daemon daemon = new Daemon(config, next -> new MemoryLine(board, baud, System::nanoTime))) {
            daemon.start();
            Thread.sleep(WARM_UP_MS);
            measure(daemon);
        }
    }

    private static void measure(Daemon daemon) throws InterruptedException, IOException {
        OperatingSystemMXBean process = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        long begun = System.nanoTime();
        long frames = daemon.frames().snapshot().frames();
        long thread = frameThreadNanos();
        long all = process.getProcessCpuTime();
        Thread.sleep(MEASURED_MS);
        double micros = (frameThreadNanos() - thread)
                / 1e3
                / (daemon.frames().snapshot().frames() - frames);
        double percent = 100.0 * (process.getProcessCpuTime() - all) / (System.nanoTime() - begun);
        System.out.println(micros + " " + percent + " " + residentMib());
    }

    /** {@code VmRSS} of proc(5). */
    private static double residentMib() throws IOException {
        return Files.readAllLines(Path.of("/proc/self/status")).stream()
                        .filter(line -> line.startsWith("VmRSS:"))
                        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
                        .findFirst()
                        .orElseThrow()
                / 1024.0;
    }

    private static long frameThreadNanos() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        ThreadInfo frames = Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                .filter(info -> info.getThreadName().equals("frames"))
                .findFirst()
                .orElseThrow();
        return threads.getThreadCpuTime(frames.getThreadId());
    }
}
