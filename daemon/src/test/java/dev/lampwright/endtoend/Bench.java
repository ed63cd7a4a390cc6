package dev.lampwright.endtoend;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.Recording.Entry;
import dev.lampwright.testing.RunningDaemon;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.Predicate;

/** A printer, a broker, a running daemon and a controller in memory behind a device node, combined. */
final class Bench implements AutoCloseable {
    private static final int BAUD = 500_000;
    private static final Duration LONGEST_START = Duration.ofSeconds(20);

    private final Mosquitto broker;
    private final Birch birch;
    private final PtyController controller;
    private final RunningDaemon daemon;

    /**
     * Sets it up and waits until the strip is lit.
     *
     * @param folder for files and the device node
     * @param broker a broker that listens; it is closed with this
     * @param brokerLines further lines of the broker's section
     * @param options of {@code java}
     */
    Bench(Path folder, Mosquitto broker, List<String> brokerLines, String... options) {
        this.broker = broker;
        birch = new Birch(broker);
        controller = PtyController.pluggedIn(folder);
        daemon = RunningDaemon.start(
                birch.configure(folder, controller.port(), BAUD, brokerLines.toArray(String[]::new)), options);
        try {
            awaitFrame("the first frame", Entry::fromHost, LONGEST_START);
        } catch (AssertionError e) {
            close();
            throw e;
        }
    }

    Mosquitto broker() {
        return broker;
    }

    Birch birch() {
        return birch;
    }

    PtyController controller() {
        return controller;
    }

    RunningDaemon daemon() {
        return daemon;
    }

    /** Waits until the strip shows a picture. */
    void awaitPicture(Picture picture) {
        awaitPicture(picture, LONGEST_START);
    }

    /** Waits until the strip shows a picture. */
    void awaitPicture(Picture picture, Duration deadline) {
        awaitFrame("the strip shows " + picture, entry -> picture.isOn(entry.strip()), deadline);
    }

    /** Waits until the daemon's newest frame meets a condition. */
    void awaitFrame(String description, Predicate<Entry> so, Duration deadline) {
        Await.until(
                () -> description + "; last was "
                        + controller.recording().entries().stream().reduce((first, second) -> second) + "; log "
                        + daemon.log(),
                () -> controller.recording().lastIs(entry -> entry.fromHost() && so.test(entry)),
                deadline);
    }

    @Override
    public void close() {
        daemon.close();
        controller.close();
        broker.close();
    }
}
