package dev.lampwright.endtoend;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * What the daemon uses after running for a while: 300 pixels, 60 frames a second, the built-in looks, a printing printer. Options and
 * environment are those of the package's launcher.
 */
public final class Footprint {
    private static final Path PACKAGING = Path.of("..", "systemd");
    /** Files with the options of {@code java} from the package. */
    static final List<Path> OPTIONS = List.of(PACKAGING.resolve("java.options"), PACKAGING.resolve("run.options"));

    /** Variables of the environment that the package's launcher sets. */
    static final Map<String, String> ENVIRONMENT = Map.of("MALLOC_ARENA_MAX", "1");

    private static final long MESSAGE_EVERY_NANOS = TimeUnit.SECONDS.toNanos(2);
    private static final double MIB = 1024;

    private final Path folder;

    private Footprint(Path folder) {
        this.folder = folder;
    }

    /**
     * Makes an archive of classes like the package's installation.
     *
     * @param folder for files
     * @return how to start the daemon
     */
    public static Footprint prepare(Path folder) throws IOException {
        Footprint footprint = new Footprint(folder);
        try (RunningDaemon daemon = RunningDaemon.start(
                PACKAGING.resolve("archive.toml"),
                ENVIRONMENT,
                "-XX:ArchiveClassesAtExit=" + footprint.archive(),
                "-XX:+UseSerialGC")) {
            Await.until(
                    "the daemon has started",
                    () -> !daemon.linesWith(0, "started with").isEmpty());
            await(System.nanoTime() + MESSAGE_EVERY_NANOS);
            daemon.terminate();
        }
        if (!Files.exists(footprint.archive())) {
            throw new IOException("the Java runtime has written no archive of classes");
        }
        return footprint;
    }

    /** The archive of classes. It fits class paths that begin with {@code target/lampwright.jar}. */
    public Path archive() {
        return folder.resolve("classes.jsa");
    }

    /** Options of {@code java}. */
    String[] options() {
        return new String[] {
            "@" + PACKAGING.resolve("java.options"),
            "@" + PACKAGING.resolve("run.options"),
            "-XX:SharedArchiveFile=" + archive()
        };
    }

    /** Starts the daemon. */
    RunningDaemon start(Path config) {
        return RunningDaemon.start(config, ENVIRONMENT, options());
    }

    /**
     * Runs the daemon and prints what it uses.
     *
     * @param minutes how long, above 0
     */
    void print(double minutes) throws IOException {
        try (Mosquitto broker = Mosquitto.start();
                PtyController controller = PtyController.pluggedIn(folder);
                RunningDaemon daemon = start(configure(broker, controller))) {
            long ready = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
            printUntil(ready, broker, controller);
            double before = daemon.processorSeconds();
            long end = ready + (long) (minutes * TimeUnit.MINUTES.toNanos(1));
            long sent = printUntil(end, broker, controller);
            double seconds = (System.nanoTime() - ready) / 1e9;
            System.out.printf(
                    Locale.ROOT,
                    "after %.1f minutes: resident %.1f MiB, proportional %.1f MiB; %.2f %% of a core; %.1f frames/s"
                            + " differed and were sent%n",
                    minutes,
                    daemon.residentKibAsItIs() / MIB,
                    daemon.proportionalKib() / MIB,
                    100 * (daemon.processorSeconds() - before) / seconds,
                    sent / seconds);
        }
    }

    /** Lets the printer print, and counts the frames during that time. */
    private static long printUntil(long end, Mosquitto broker, PtyController controller) {
        long frames = 0;
        for (int message = 0; System.nanoTime() - end < 0; message++) {
            broker.publish("shop/alder/job", "{\"phase\":\"RUN\",\"percent\":" + message % 100 + "}", true);
            await(Math.min(end, System.nanoTime() + MESSAGE_EVERY_NANOS));
            frames += controller.recording().entries().size();
            controller.recording().clear();
        }
        return frames;
    }

    private Path configure(Mosquitto broker, PtyController controller) throws IOException {
        return Files.write(
                folder.resolve("alder.toml"),
                List.of(
                        "broker.url = \"" + broker.url() + "\"",
                        "controller = { port = \"" + controller.port() + "\", baud = 1000000 }",
                        "supply.ceiling_mA = 4000",
                        "strip.pixels = 300",
                        "[printer.state]",
                        "topic = \"shop/alder/job\"",
                        "at = \"/phase\"",
                        "printing = [\"RUN\"]",
                        "[printer.readings]",
                        "job.progress = { topic = \"shop/alder/job\", at = \"/percent\", scale = 0.01 }"));
    }

    private static void await(long nanos) {
        while (System.nanoTime() - nanos < 0) {
            Await.pause();
        }
    }
}
