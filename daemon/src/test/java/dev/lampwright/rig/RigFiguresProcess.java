package dev.lampwright.rig;

import com.sun.management.OperatingSystemMXBean;
import com.sun.management.ThreadMXBean;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Shop;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.FrameReport;
import dev.lampwright.engine.Lateness;
import dev.lampwright.engine.RigPlace;
import dev.lampwright.engine.StatusWatch;
import dev.lampwright.link.LineException;
import dev.lampwright.link.SerialLine;
import dev.lampwright.protocol.Here;
import dev.lampwright.testing.LineAround;
import dev.lampwright.upkeep.ProcessAge;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.LongStream;

/**
 * The process that {@link RigFigures} measures from inside: the rigs of a folder, as {@code run} creates them, with in-memory controllers.
 */
final class RigFiguresProcess {
    private static final int FRAMES_PER_SECOND = 60;
    private static final Here BOARD = new Here(1, "1.0.0", 0x6c616d7000000001L, 300, 1024, 6, 2, 10_000, true);
    private static final String SHARED = """
        frames_per_s = 60
        broker.url = "%s"
        controller = { port = "%s{rig}", baud = 1000000 }
        supply.ceiling_mA = 4000
        strip.pixels = %d
        [printer.state]
        topic = "shop/{rig}/job"
        printing = ["RUN"]
        [printer.readings]
        bed.actual_C = { topic = "shop/{rig}/heat", at = "/now" }
        bed.setpoint_C = { topic = "shop/{rig}/heat", at = "/set" }
        [zones]
        bed = "0-%d"
        [looks.printing]
        layers = [
          { paint = "ramp", colours = ["navy", "teal", "blue"], cycle_s = 20 },
          { zone = "bed", paint = "scale", colours = ["midnightblue", "orangered"], by = "bed.heat", extent = "bar" },
        ]
        """;

    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final OperatingSystemMXBean SYSTEM =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private static final AtomicLong CONTROLLERS_NANOS = new AtomicLong();

    private RigFiguresProcess() {}

    static String name(int rig) {
        return "r" + rig;
    }

    /** Counts the processor time of the controller, which runs inside the calls to its line. */
    private static final class CountedLine extends LineAround {
        CountedLine(MemoryLine line) {
            super(line);
        }

        @Override
        public int read(byte[] into, int timeoutMillis) throws LineException {
            long before = THREADS.getCurrentThreadCpuTime();
            int count = super.read(into, timeoutMillis);
            CONTROLLERS_NANOS.addAndGet(THREADS.getCurrentThreadCpuTime() - before);
            return count;
        }

        @Override
        public void write(byte[] bytes, int count) throws LineException {
            long before = THREADS.getCurrentThreadCpuTime();
            super.write(bytes, count);
            CONTROLLERS_NANOS.addAndGet(THREADS.getCurrentThreadCpuTime() - before);
        }
    }

    private static Daemon daemonAtPort(Path file, Config config, RigPlace place) {
        return new Daemon(
                config,
                same -> new SerialLine(
                        same.controller().port(), same.controller().baud()),
                StatusWatch.NOBODY,
                Optional.empty(),
                place);
    }

    private static Daemon daemon(Path file, Config config, RigPlace place) {
        MemoryController controller = new MemoryController(BOARD, (light, sequence, frame, nanos) -> {});
        CountedLine line =
                new CountedLine(new MemoryLine(controller, config.controller().baud(), System::nanoTime));
        return new Daemon(config, same -> line, StatusWatch.NOBODY, Optional.empty(), place);
    }

    /** A thread that parks like a frame loop, and nothing else. */
    private static Lateness parking() {
        Lateness lateness = new Lateness();
        Thread thread = new Thread(
                () -> {
                    long start = System.nanoTime();
                    for (long tick = 1; ; tick++) {
                        long due = start + tick * TimeUnit.SECONDS.toNanos(1) / FRAMES_PER_SECOND;
                        while (due - System.nanoTime() > 0) {
                            LockSupport.parkNanos(due - System.nanoTime());
                        }
                        lateness.add(System.nanoTime() - due);
                    }
                },
                "parking");
        thread.setDaemon(true);
        thread.start();
        return lateness;
    }

    private static long allocated() {
        long bytes = 0;
        for (Thread thread : Thread.getAllStackTraces().keySet()) {
            if (thread.getName().startsWith("frames")) {
                bytes += Math.max(0, THREADS.getThreadAllocatedBytes(thread.getId()));
            }
        }
        return bytes;
    }

    private static long frames(List<Rig> rigs) {
        return rigs.stream().mapToLong(rig -> report(rig).frames()).sum();
    }

    private static boolean hasMadeAFrame(Rig rig) {
        return rig.daemon()
                .filter(daemon -> daemon.frames().snapshot().frames() > 0)
                .isPresent();
    }

    private static FrameReport report(Rig rig) {
        return rig.daemon().orElseThrow().frames().snapshot();
    }

    private static String residentKib() throws IOException {
        return Files.readAllLines(Path.of("/proc/self/status")).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .map(line -> line.replaceAll("[^0-9]", ""))
                .findFirst()
                .orElse("0");
    }

    /**
     * Runs and prints.
     *
     * @param args folder, broker, seconds, rigs, what the names of their ports begin with (nothing for controllers in memory), pixels of each,
     *     seconds to warm up
     */
    public static void main(String[] args) throws IOException, ConfigException, InterruptedException {
        Path folder = Path.of(args[0]);
        int seconds = Integer.parseInt(args[2]);
        int count = Integer.parseInt(args[3]);
        int pixels = Integer.parseInt(args[5]);
        Files.createDirectories(folder.resolve("rigs"));
        Files.writeString(folder.resolve("shop.toml"), SHARED.formatted(args[1], args[4], pixels, pixels / 3 - 1));
        for (int rig = 0; rig < count; rig++) {
            Files.writeString(folder.resolve("rigs").resolve(name(rig) + ".toml"), "");
        }
        Rigs.Maker maker = args[4].isEmpty() ? RigFiguresProcess::daemon : RigFiguresProcess::daemonAtPort;
        try (Rigs rigs = new Rigs(maker, System::nanoTime)) {
            rigs.follow(Shop.read(folder, Set.of()));
            while (!rigs.all().stream().allMatch(RigFiguresProcess::hasMadeAFrame)) {
                TimeUnit.MILLISECONDS.sleep(5);
            }
            String started = "%d ms from the start of the process to a frame of every rig, %d ms of processor time"
                    .formatted(ProcessAge.now().toMillis(), TimeUnit.NANOSECONDS.toMillis(SYSTEM.getProcessCpuTime()));
            lookAroundFor(rigs, Integer.parseInt(args[6]));
            print(rigs, seconds, started);
        }
        System.exit(0);
    }

    private static void lookAroundFor(Rigs rigs, int seconds) throws InterruptedException {
        for (int half = 0; half < 2 * seconds; half++) {
            TimeUnit.MILLISECONDS.sleep(500);
            rigs.lookAround();
        }
    }

    private static void print(Rigs rigs, int seconds, String started) throws IOException, InterruptedException {
        List<Rig> all = rigs.all();
        Lateness bare = parking();
        LateSince[] late = all.stream().map(LateSince::new).toArray(LateSince[]::new);
        long processor = SYSTEM.getProcessCpuTime();
        long controllers = CONTROLLERS_NANOS.get();
        long allocated = allocated();
        long frames = frames(all);
        long left = all.stream().mapToLong(rig -> report(rig).skipped()).sum();
        long begun = System.nanoTime();
        lookAroundFor(rigs, seconds);
        double nanos = System.nanoTime() - begun;
        long ours = SYSTEM.getProcessCpuTime() - processor - (CONTROLLERS_NANOS.get() - controllers);
        long made = frames(all) - frames;
        double together = LateSince.millisAt(0.999, late);
        double worst = Arrays.stream(late)
                .mapToDouble(one -> LateSince.millisAt(0.999, one))
                .max()
                .orElse(0);
        System.out.printf(
                Locale.ROOT,
                "%d rigs: %.1f %% of a core (controllers %.1f %% more); resident %.1f MiB; %d threads; lateness p99.9"
                        + " of all frames %.2f ms, of the worst rig's %.2f ms, of a bare parking thread %.2f ms; %.1f frames/s, %d ticks left out;"
                        + " %.2f bytes allocated a frame; %s%n",
                all.size(),
                100 * ours / nanos,
                100 * (CONTROLLERS_NANOS.get() - controllers) / nanos,
                Double.parseDouble(residentKib()) / 1024,
                THREADS.getThreadCount(),
                together,
                worst,
                bare.microsAt(0.999) / 1000,
                made * 1e9 / nanos,
                all.stream().mapToLong(rig -> report(rig).skipped()).sum() - left,
                (allocated() - allocated) / (double) Math.max(1, made),
                started);
    }

    /** How late frames have been since a moment, in classes of 50 µs to 100 ms, each 3 % above the last. */
    private static final class LateSince {
        private static final long[] CLASSES = LongStream.iterate(
                        50_000, nanos -> nanos < 100_000_000, nanos -> nanos + nanos / 32)
                .toArray();

        private final Lateness lateness;
        private final long total;
        private final long[] upTo;

        LateSince(Rig rig) {
            lateness = rig.daemon().orElseThrow().frames().lateness();
            total = lateness.total();
            upTo = Arrays.stream(CLASSES).map(lateness::upTo).toArray();
        }

        private long frames() {
            return lateness.total() - total;
        }

        private long framesUpTo(int at) {
            return lateness.upTo(CLASSES[at]) - upTo[at];
        }

        /** The lateness, in ms, that a share of the frames of one or several rigs stayed at or under. */
        static double millisAt(double share, LateSince... rigs) {
            double wanted =
                    share * Arrays.stream(rigs).mapToLong(LateSince::frames).sum();
            int at = 0;
            while (at < CLASSES.length - 1 && upTo(at, rigs) < wanted) {
                at++;
            }
            return CLASSES[at] / 1e6;
        }

        private static long upTo(int at, LateSince... rigs) {
            return Arrays.stream(rigs).mapToLong(rig -> rig.framesUpTo(at)).sum();
        }
    }
}
