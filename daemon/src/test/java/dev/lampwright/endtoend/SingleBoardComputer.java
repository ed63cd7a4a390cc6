package dev.lampwright.endtoend;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Limited;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.NotifyReceiver;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.RunningDaemon;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BooleanSupplier;

/**
 * Runs the installed package in another computer's Debian and prints a line for each thing that this proves; not a test. The system is in a
 * folder, with the package installed, {@code /proc} and {@code /dev/pts} mounted, and this kernel can run its programs.
 * {@code systemd/check-on-arm} prepares this and runs the class, as root, from the folder {@code daemon}.
 *
 * <p>The daemon runs inside, by the package's launcher and as the package's user, with the environment that systemd gives a service.
 * Broker, controller and service manager run on this computer; the pseudo-terminal belongs to the group {@code dialout}, like a serial
 * port.
 */
final class SingleBoardComputer {
    /** Emulated programs are many times slower. */
    private static final Duration PATIENCE = Duration.ofMinutes(5);

    /** Where the files that both sides need are, inside. */
    private static final Path MEETING_PLACE = Path.of("/run/lampwright-try");

    /** WatchdogSec= of the service, in µs. */
    private static final String WATCHDOG_MICROS = "30000000";

    /** The same number in every Debian (package base-passwd). */
    private static final int DIALOUT = 20;

    private static final long ENOUGH_FRAMES = 300;
    private static final int ENOUGH_SIGNS_OF_LIFE = 3;

    private final String name;
    private final Mosquitto broker;
    private final PtyController controller;
    private final NotifyReceiver manager;
    private final RunningDaemon daemon;
    private final URI metrics;
    private final HttpClient http = HttpClient.newHttpClient();

    private SingleBoardComputer(
            String name,
            Mosquitto broker,
            PtyController controller,
            NotifyReceiver manager,
            RunningDaemon daemon,
            int metricsPort) {
        this.name = name;
        this.broker = broker;
        this.controller = controller;
        this.manager = manager;
        this.daemon = daemon;
        metrics = URI.create("http://127.0.0.1:" + metricsPort + "/metrics");
    }

    /**
     * Runs it.
     *
     * @param args the system's folder and its name, with which each line starts
     */
    public static void main(String[] args) throws IOException {
        Path root = Path.of(args[0]);
        Path shared = root.resolve(Path.of("/").relativize(MEETING_PLACE));
        Files.createDirectories(shared);
        int metricsPort = FreePort.find();
        try (Mosquitto broker = Mosquitto.start();
                PtyController controller = PtyController.pluggedIn(shared);
                NotifyReceiver manager =
                        new NotifyReceiver(shared.resolve("notify").toString());
                RunningDaemon daemon = RunningDaemon.start(
                        command(root, configure(shared, broker, controller, metricsPort), manager))) {
            new SingleBoardComputer(args[1], broker, controller, manager, daemon, metricsPort).prove();
        } catch (AssertionError e) {
            System.out.println("NOT OK: " + args[1] + ": " + e.getMessage());
            System.exit(1);
        }
    }

    /** Writes the configuration and gives the daemon's user access to what it needs. */
    private static Path configure(Path shared, Mosquitto broker, PtyController controller, int metricsPort)
            throws IOException {
        Path port = controller.port().toRealPath();
        Files.setAttribute(port, "unix:gid", DIALOUT);
        Files.setPosixFilePermissions(port, PosixFilePermissions.fromString("rw-rw----"));
        Files.setPosixFilePermissions(shared.resolve("notify"), PosixFilePermissions.fromString("rw-rw-rw-"));
        Path inside = MEETING_PLACE.resolve(controller.port().getFileName());
        Path config = new Birch(broker).configure(shared, inside, 500_000, "[metrics]", "port = " + metricsPort);
        return MEETING_PLACE.resolve(config.getFileName());
    }

    private static ProcessBuilder command(Path root, Path config, NotifyReceiver manager) {
        ProcessBuilder builder = new ProcessBuilder(Limited.withUsualSignals(List.of(
                        "chroot",
                        root.toString(),
                        "setpriv",
                        "--reuid=lampwright",
                        "--regid=lampwright",
                        "--init-groups",
                        "--no-new-privs",
                        "lampwright",
                        "run",
                        "--config",
                        config.toString())))
                .redirectErrorStream(true);
        Map<String, String> environment = builder.environment();
        environment.clear();
        environment.putAll(Map.of(
                "PATH",
                "/usr/sbin:/usr/bin:/sbin:/bin",
                "LANG",
                "C.UTF-8",
                "NOTIFY_SOCKET",
                MEETING_PLACE.resolve(Path.of(manager.name()).getFileName()).toString(),
                "WATCHDOG_USEC",
                WATCHDOG_MICROS));
        return builder;
    }

    private void prove() {
        prove("the broker is connected", () -> figure("broker_connected") == 1);
        prove("the controller's link is lit", () -> figure("link_up") == 1);
        prove("READY=1 came", () -> signs("READY=1") > 0);
        prove("WATCHDOG=1 came, " + ENOUGH_SIGNS_OF_LIFE + " times", () -> signs("WATCHDOG=1") >= ENOUGH_SIGNS_OF_LIFE);
        new Birch(broker).tellJob(Birch.HELD, 50);
        prove("the strip shows what the printer told the broker", this::showsHeld);
        await("frames are acknowledged", () -> figure("frames_shown_total") >= ENOUGH_FRAMES);
        tell(String.format(
                Locale.ROOT,
                "%.0f of %.0f frames acknowledged",
                figure("frames_shown_total"),
                figure("frames_sent_total")));
        RunningDaemon.End end = daemon.terminate();
        if (end.status() != 0) {
            throw new AssertionError("exit " + end.status() + " on SIGTERM; log: " + daemon.log());
        }
        tell(String.format(Locale.ROOT, "exit 0 on SIGTERM, after %.1f s", end.nanos() / 1e9));
    }

    private void prove(String what, BooleanSupplier so) {
        await(what, so);
        tell(what);
    }

    private void await(String what, BooleanSupplier so) {
        Await.until(
                () -> what + "; the service manager heard " + manager.lines() + "; log " + daemon.log(),
                () -> so.getAsBoolean() || hasEnded(what),
                PATIENCE);
    }

    private boolean hasEnded(String what) {
        if (!daemon.isAlive()) {
            throw new AssertionError("the daemon ended before this: " + what + "; log " + daemon.log());
        }
        return false;
    }

    private void tell(String what) {
        System.out.println("ok: " + name + ": " + what);
    }

    private long signs(String line) {
        return manager.lines().stream().filter(line::equals).count();
    }

    private boolean showsHeld() {
        return controller
                .recording()
                .lastIs(shown -> shown.fromHost() && Birch.still(Birch.HELD).isOn(shown.strip()));
    }

    /** A figure from the daemon's own metrics; NaN as long as there is none. */
    private double figure(String of) {
        String start = "lampwright_" + of + " ";
        HttpRequest ask = HttpRequest.newBuilder(metrics).timeout(PATIENCE).build();
        try {
            return http.send(ask, BodyHandlers.ofString())
                    .body()
                    .lines()
                    .filter(line -> line.startsWith(start))
                    .mapToDouble(line -> Double.parseDouble(line.substring(start.length())))
                    .findFirst()
                    .orElse(Double.NaN);
        } catch (IOException e) {
            return Double.NaN;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while asking for metrics", e);
        }
    }
}
