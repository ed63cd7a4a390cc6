package dev.lampwright.fuzz;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Flatness;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Threads, file descriptors and memory of this process, measured in moments of calm. */
final class ResourceWatch {
    /**
     * A few more may exist for a moment, such as a connection that is ending. A leak of one in each attack soon exceeds this. No source.
     */
    private static final int TOLERANCE = 3;

    private static final double TOLERANCE_MIB = 8;
    private static final double BYTES_A_MIB = 1 << 20;
    /** The page's threads for requests, which may stay for ten seconds; and those of the rig and of the runtime. */
    private static final Pattern POOLED = Pattern.compile("page \\d+");

    private static final Pattern OURS =
            Pattern.compile("main|fake broker|pty controller|heartbeat|process reaper.*|surefire.*|junit.*|small"
                    + " stack|Reference Handler|Finalizer|Signal Dispatcher|Common-Cleaner|Notification Thread|Attach"
                    + " Listener|ForkJoinPool.*|CompletableFutureDelayScheduler|jqwik.*|.*Keep-Alive.*");
    /** The page has room for 32 viewers and answers 8 other requests at a time. */
    private static final int MOST_POOLED = 40;

    private final long started = System.nanoTime();
    private final Duration patience;
    private final int baseThreads;
    private final int baseDescriptors;
    private final Flatness memory;

    /**
     * Measures the initial values.
     *
     * @param warmUpSeconds memory measured before that is ignored
     * @param patience how long to wait for temporary ones to disappear
     */
    ResourceWatch(double warmUpSeconds, Duration patience) {
        this.patience = patience;
        baseThreads = threads().size();
        baseDescriptors = descriptors().size();
        memory = new Flatness("heap in MiB", TOLERANCE_MIB, warmUpSeconds);
    }

    /** Waits until threads and descriptors are back to their initial values; returns what is wrong if they do not return to them. */
    List<String> faults() {
        List<String> faults = new ArrayList<>();
        System.gc();
        long pooled =
                all().stream().filter(name -> POOLED.matcher(name).matches()).count();
        if (pooled > MOST_POOLED) {
            faults.add("the page has " + pooled + " threads");
        }
        if (!isSoon(() -> threads().size() <= baseThreads + TOLERANCE)) {
            faults.add("threads: " + baseThreads + " at first, now " + counted(threads()));
        }
        if (!isSoon(() -> descriptors().size() <= baseDescriptors + TOLERANCE)) {
            faults.add("descriptors: " + baseDescriptors + " at first, now " + counted(descriptors()));
        }
        long used = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
        memory.add((System.nanoTime() - started) * 1e-9, used / BYTES_A_MIB);
        return faults;
    }

    /** What is wrong with the memory, at the end. */
    List<String> growth() {
        return memory.judge().stream().toList();
    }

    private boolean isSoon(BooleanSupplier calm) {
        long end = System.nanoTime() + patience.toNanos();
        while (!calm.getAsBoolean() && System.nanoTime() - end < 0) {
            Await.pause();
        }
        return calm.getAsBoolean();
    }

    private static List<String> all() {
        return Thread.getAllStackTraces().keySet().stream().map(Thread::getName).toList();
    }

    private static List<String> threads() {
        return all().stream()
                .filter(name ->
                        !POOLED.matcher(name).matches() && !OURS.matcher(name).matches())
                .toList();
    }

    private static List<String> descriptors() {
        try (Stream<Path> open = Files.list(Path.of("/proc/self/fd"))) {
            return open.map(ResourceWatch::target)
                    .filter(target -> !target.isEmpty())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String target(Path descriptor) {
        try {
            return Files.readSymbolicLink(descriptor).toString().replaceFirst("\\[\\d+]$", "");
        } catch (IOException e) {
            return ""; // closed meanwhile
        }
    }

    private static Map<String, Integer> counted(List<String> names) {
        Map<String, Integer> counts = new TreeMap<>();
        names.forEach(name -> counts.merge(name.replaceFirst("[-\\d]+$", ""), 1, Integer::sum));
        return counts;
    }

    @Override
    public String toString() {
        return "threads " + baseThreads + " at first and " + threads().size() + " at the end, descriptors "
                + baseDescriptors + " and " + descriptors().size() + "; " + memory;
    }
}
