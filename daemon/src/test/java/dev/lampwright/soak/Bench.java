package dev.lampwright.soak;

import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.NamedPipe;
import dev.lampwright.testing.RunningDaemon;
import dev.lampwright.testing.SmallDisk;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;

/** A printer, a broker, a daemon and a controller, set up in their own folder. */
final class Bench implements AutoCloseable {
    /** The files that the service's launcher passes to the runtime. */
    private static final List<String> SERVICE_OPTIONS = List.of("@../systemd/java.options", "@../systemd/run.options");

    private final Path config;
    private final int metricsPort = FreePort.find();
    private final WallClock clock;
    private final SmallDisk disk;
    private final Mosquitto broker;
    private final Rowan rowan;
    private final FarEnd controller;
    private final RunningDaemon daemon;
    private final AtomicBoolean closed = new AtomicBoolean();
    private boolean edition = true;

    /**
     * Starts everything.
     *
     * @param folder an empty folder
     * @param board whether the controller is the emulated board
     */
    Bench(Path folder, boolean board) throws IOException {
        config = folder.resolve("rowan.toml");
        clock = new WallClock(folder);
        disk = new SmallDisk(folder.resolve("disk"));
        broker = Mosquitto.start();
        rowan = new Rowan(broker);
        controller = board ? new BoardEnd(folder) : new MemoryEnd(folder);
        write(configuration());
        daemon = RunningDaemon.start(command());
    }

    /** The daemon as the service runs it, except for the clock. */
    private ProcessBuilder command() {
        List<String> words = new ArrayList<>(RunningDaemon.command(
                SERVICE_OPTIONS,
                "run",
                "--config",
                config.toString(),
                "--record",
                disk.recording().toString()));
        ProcessBuilder builder = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(disk.log().toFile()));
        builder.environment().putAll(clock.environment());
        return builder;
    }

    /** The content of the configuration when it is valid. */
    String configuration() {
        return Rowan.configuration(broker.url(), controller.port(), metricsPort, edition);
    }

    /** Which edition of the configuration is active, or will be. */
    boolean edition() {
        return edition;
    }

    /** Switches to the other edition, which has yet to be written. */
    void turnEdition() {
        edition = !edition;
    }

    /** Writes the configuration, valid or not. */
    void write(String text) throws IOException {
        Files.writeString(config, text);
    }

    /** Removes the configuration, whatever is in its place. */
    void deleteConfiguration() throws IOException {
        Files.deleteIfExists(config);
    }

    /** Puts a pipe that nobody writes to in its place. */
    void pipeForConfiguration() {
        NamedPipe.at(config);
    }

    /** Asks the daemon to read it again. */
    void hangUp() {
        daemon.signal("HUP");
    }

    int metricsPort() {
        return metricsPort;
    }

    WallClock clock() {
        return clock;
    }

    SmallDisk disk() {
        return disk;
    }

    Mosquitto broker() {
        return broker;
    }

    Rowan rowan() {
        return rowan;
    }

    FarEnd controller() {
        return controller;
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
        controller.close();
        broker.close();
        disk.close();
    }
}
