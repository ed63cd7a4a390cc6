package dev.lampwright.fuzz;

import dev.lampwright.cli.InProcess;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.desk.Desk;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Faults;
import dev.lampwright.testing.FreePort;
import dev.lampwright.testing.Heartbeat;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.RawHttp;
import dev.lampwright.testing.Recoveries;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/** A daemon in this process with its page and its metrics, between a broker and a controller that misbehave on demand. For one thread. */
final class Rig implements AutoCloseable {
    private static final Duration LONGEST_RECOVERY = Duration.ofSeconds(30);
    private static final Duration LONGEST_GOING = Duration.ofSeconds(20);

    private final Path folder;
    private final Path file;
    private final String house;
    private final int pagePort = FreePort.find();
    private final int metricsPort = FreePort.find();
    private final int brokerPort = FreePort.find();
    private final Heartbeat heartbeat = new Heartbeat();
    private final LogWatch log = new LogWatch();
    private final Hub hub = new Hub(brokerPort);
    private final PtyController controller;
    private final LightWatch light;
    private final InProcess daemon;
    private final Config home;
    private final ResourceWatch resources;
    private final Recoveries recoveries = new Recoveries();
    private Colour colour = Colour.IDLE;
    private long refusals;

    /**
     * Starts it and waits for the first light.
     *
     * @param parent the parent of its new folder
     * @param warmUpSeconds memory measured before that is ignored
     */
    Rig(Path parent, double warmUpSeconds) throws IOException {
        folder = Files.createTempDirectory(parent, "rig");
        file = folder.resolve("alder.toml");
        controller = new PtyController(folder.resolve("controller"), MemoryController.BOARD);
        light = new LightWatch(controller, heartbeat);
        controller.plug();
        house = House.file(brokerPort, controller.port(), pagePort, metricsPort);
        Files.writeString(file, house);
        try {
            daemon = new InProcess(file);
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
        home = daemon.inForce();
        heartbeat.start();
        daemon.start();
        List<String> faults = new ArrayList<>(calm(Colour.WARMING, Duration.ofMinutes(1)));
        faults.addAll(silentServers());
        if (!faults.isEmpty()) {
            close();
            throw new AssertionError("wrong from the start: " + faults);
        }
        resources = new ResourceWatch(warmUpSeconds, LONGEST_GOING);
    }

    Hub hub() {
        return hub;
    }

    PtyController controller() {
        return controller;
    }

    Path folder() {
        return folder;
    }

    int pagePort() {
        return pagePort;
    }

    int metricsPort() {
        return metricsPort;
    }

    /** The active configuration unless an attack has changed it. */
    String house() {
        return house;
    }

    /** A configuration's text with the broker and the controller of this rig in it. */
    byte[] here(String text) {
        return text.replaceFirst("(?m)^url = \"mqtt:.*?\"", "url = \"mqtt://127.0.0.1:" + brokerPort + "\"")
                .replaceFirst("(?m)^port = \"/dev/.*?\"", "port = \"" + controller.port() + "\"")
                .getBytes(StandardCharsets.UTF_8);
    }

    /** Whether the daemon can apply a configuration without connecting to anything outside this rig, and without permission to flash. */
    boolean isHarmless(Config config) {
        return config.broker().url().equals(home.broker().url())
                && config.controller().port().equals(home.controller().port())
                && config.page().map(page -> page.address().isLoopbackAddress()).orElse(true)
                && !config.light().guard().allowFlashing();
    }

    /** Makes the daemon read a configuration as if its file had changed. */
    void readAgain(byte[] text) throws IOException {
        Files.write(file, text);
        daemon.readAgain();
    }

    /** Records that something was refused, as it should be. */
    void refused() {
        refusals++;
    }

    /** How often something was refused so far. */
    long refusals() {
        return refusals;
    }

    /** Waits a while, doing what the daemon's main thread does. */
    void pass(long millis) {
        long end = System.nanoTime() + Duration.ofMillis(millis).toNanos();
        while (System.nanoTime() - end < 0) {
            Await.pause();
        }
        daemon.lookAround();
    }

    /**
     * Makes everything behave again, and checks everything.
     *
     * @param after what the printer reports; a different state, if it has already reported that
     * @param promise how soon the light must be right
     * @return everything that is wrong
     */
    List<String> calm(Colour after, Duration promise) throws IOException {
        List<String> faults = new ArrayList<>();
        if (!Files.readString(file).equals(house)) {
            readAgain(house.getBytes(StandardCharsets.UTF_8));
        }
        controller.mute(false);
        controller.toHost(Faults.none());
        hub.beHonest();
        resetDesk(daemon.daemon().desk());
        colour = after == colour ? after.other() : after;
        hub.keep(House.LINK, "online");
        hub.keep(House.CAMERA, "SNAPPED");
        long honest = System.nanoTime();
        hub.keep(House.JOB, House.job(colour));
        light.want(colour, honest);
        awaitLight(honest, promise, faults);
        faults.addAll(light.faults());
        faults.addAll(log.faults());
        return faults;
    }

    private static void resetDesk(Desk desk) {
        desk.ask("brightness", "1");
        desk.ask("look", "auto");
        desk.ask("pixels", "auto");
        desk.ask("work", "auto");
        desk.ask("quiet", "auto");
    }

    private void awaitLight(long honest, Duration promise, List<String> faults) {
        OptionalLong right = light.rightSince();
        while (right.isEmpty() && System.nanoTime() - honest < LONGEST_RECOVERY.toNanos()) {
            Await.pause();
            right = light.rightSince();
        }
        if (right.isEmpty()) {
            faults.add("not " + colour + " in half a minute; link "
                    + daemon.daemon().link() + ", broker " + daemon.daemon().broker() + ", shown " + light.last()
                    + ", log " + log.last());
            return;
        }
        long late = right.getAsLong() - honest;
        long stoodStill = heartbeat.sumBetween(honest, right.getAsLong());
        recoveries
                .add("an attack", promise, late, stoodStill)
                .ifPresent(fault -> faults.add(fault + "; log " + log.last()));
    }

    /** Checks what is only right once everything is calm: threads, descriptors, page and metrics. */
    List<String> rest() {
        List<String> faults = new ArrayList<>(silentServers());
        faults.addAll(resources.faults());
        faults.addAll(log.faults());
        return faults;
    }

    private List<String> silentServers() {
        return Stream.of(silence(pagePort, "/door"), silence(metricsPort, "/metrics"))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<String> silence(int port, String path) {
        try {
            int status = RawRequest.status(RawHttp.answerTo(
                    port, "GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"));
            return status == 200 ? Optional.empty() : Optional.of(path + " answers " + status);
        } catch (IOException e) {
            return Optional.of(path + " does not answer: " + e);
        }
    }

    /** What is wrong at the end. */
    List<String> growth() {
        return resources.growth();
    }

    /** What was judged, for the summary. */
    String figures() {
        return String.format(
                Locale.ROOT,
                "%d frames judged, %d stretches of 4 s for flashes (%d inconclusive)%n%s  %d recoveries inconclusive,"
                        + " this machine stood still for %.0f ms at most%n  %s",
                light.frames(),
                light.stretches(),
                light.inconclusive(),
                recoveries,
                recoveries.inconclusive(),
                heartbeat.longest() * 1e-6,
                resources);
    }

    @Override
    public void close() {
        daemon.close();
        hub.close();
        controller.close();
        heartbeat.close();
        log.close();
    }
}
