package dev.lampwright.soak;

import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.RunningDaemon;
import dev.lampwright.testing.SmallDisk;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;

/** A process with one rig or with a folder of several, put together in a folder of its own. */
final class Bench implements AutoCloseable {
    /** The files that the service's launcher passes to the runtime. */
    private static final List<String> SERVICE_OPTIONS = List.of("@../systemd/java.options", "@../systemd/run.options");

    private static final String SHOP_OPTIONS = "@../systemd/shop.options";

    private final int metricsPort = FreePort.find();
    private final int pagePort = FreePort.find();
    private final WallClock clock;
    private final SmallDisk disk;
    private final List<RigBench> rigs = new ArrayList<>();
    private final RunningDaemon daemon;
    private final AtomicBoolean closed = new AtomicBoolean();

    /**
     * Starts everything.
     *
     * @param folder an empty folder
     * @param board whether controllers are the emulated board
     * @param names of the rigs; one has a configuration of its own, several are in the folder of a shop
     */
    Bench(Path folder, boolean board, List<String> names) throws IOException {
        clock = new WallClock(folder);
        disk = new SmallDisk(folder.resolve("disk"));
        daemon = RunningDaemon.start(names.size() == 1 ? one(folder, names.get(0), board) : shop(folder, names, board));
    }

    private ProcessBuilder one(Path folder, String name, boolean board) throws IOException {
        Path config = folder.resolve(name + ".toml");
        rigs.add(new RigBench(name, config, "metrics.port = " + metricsPort + "\n", folder, board));
        return command(
                SERVICE_OPTIONS,
                "run",
                "--config",
                config.toString(),
                "--record",
                disk.recording().toString());
    }

    private ProcessBuilder shop(Path folder, List<String> names, boolean board) throws IOException {
        Path shop = folder.resolve("shop");
        Files.createDirectories(shop.resolve("rigs"));
        Files.writeString(
                shop.resolve("shop.toml"), "metrics.port = " + metricsPort + "\npage.port = " + pagePort + "\n");
        for (String name : names) {
            Path config = shop.resolve("rigs").resolve(name + ".toml");
            rigs.add(new RigBench(name, config, "", Files.createDirectory(folder.resolve(name)), board));
        }
        List<String> options = new ArrayList<>(SERVICE_OPTIONS);
        options.add(SHOP_OPTIONS);
        return command(options, "run", "--config", shop.toString());
    }

    /** The daemon as the service runs it, but for the clock. */
    private ProcessBuilder command(List<String> options, String... arguments) {
        ProcessBuilder builder = new ProcessBuilder(RunningDaemon.command(options, arguments))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(disk.log().toFile()));
        builder.environment().putAll(clock.environment());
        return builder;
    }

    /** Its rigs, one or several. */
    List<RigBench> rigs() {
        return rigs;
    }

    /** Asks the daemon to read its files again. */
    void hangUp() {
        daemon.signal("HUP");
    }

    int metricsPort() {
        return metricsPort;
    }

    /** Where the page of several rigs is; one alone has none. */
    int pagePort() {
        return pagePort;
    }

    WallClock clock() {
        return clock;
    }

    SmallDisk disk() {
        return disk;
    }

    RunningDaemon daemon() {
        return daemon;
    }

    /** What the daemon has logged, as far as there was room. */
    List<String> log() {
        try {
            return new String(Files.readAllBytes(disk.log()), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        } catch (IOException e) {
            return List.of("the log cannot be read: " + e);
        }
    }

    /** Ends everything; has no effect the second time. */
    @Override
    public void close() {
        if (closed.getAndSet(true)) {
            return;
        }
        daemon.close();
        rigs.forEach(RigBench::close);
        disk.close();
    }
}
