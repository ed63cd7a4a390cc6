package dev.lampwright.demo;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.FrameReport;
import dev.lampwright.engine.Lateness;
import dev.lampwright.link.LinkStatus;
import dev.lampwright.page.Advice;
import dev.lampwright.page.LivePage;
import dev.lampwright.printer.PrinterState;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import org.eclipse.paho.client.mqttv3.MqttException;

/**
 * The real daemon, between an invented printer and a controller in memory: a broker is started on loopback, the printer publishes to it,
 * the daemon listens, and what the controller shows is drawn.
 */
public final class Demo implements AutoCloseable {
    private static final LongSupplier CLOCK = System::nanoTime;
    private static final String USUAL_BROKER = "mqtt://127.0.0.1:1883";

    private final double speed;
    private final ColourDepth depth;
    private final boolean withPage;
    private final PrintWriter out;
    private final EmbeddedBroker broker = new EmbeddedBroker();
    private final CountDownLatch ended = new CountDownLatch(1);

    /**
     * Prepares a demo.
     *
     * @param speed how many seconds of the invented job pass in one second
     * @param depth colours of the terminal
     * @param withPage whether there is a live page
     * @param out the terminal
     */
    public Demo(double speed, ColourDepth depth, boolean withPage, PrintWriter out) {
        this.speed = speed;
        this.depth = depth;
        this.withPage = withPage;
        this.out = out;
    }

    /**
     * Runs the demo, then prints its last line.
     *
     * @param seconds how long, in s; infinite until {@link #close}
     * @throws IOException if no loopback port is available, or the broker does not answer there
     */
    public void run(double seconds) throws IOException {
        broker.start();
        Config config = config(broker.url());
        CheckingDisplay display = new CheckingDisplay(config.setup());
        MemoryController controller = new MemoryController(MemoryController.BOARD, display);
        MemoryLine line = new MemoryLine(controller, config.controller().baud(), CLOCK);
        try (InventedPrinter printer = new InventedPrinter(broker.url(), speed);
                Daemon daemon = new Daemon(config, same -> line);
                LivePage page = new LivePage(daemon, Advice.NONE)) {
            display.watch(daemon);
            // The first connection makes the broker load most of its classes, which may take longer than the daemon
            // waits.
            printer.connect();
            daemon.start();
            printer.start();
            page.follow(config.page().filter(settings -> withPage));
            page.url().ifPresent(url -> out.println("  See it in a browser too: " + url));
            draw(new Screen(config, daemon, display, depth), seconds);
            out.println(summary(daemon, display));
        } catch (MqttException e) {
            throw new IOException(
                    "the demo's own broker at " + broker.url() + " does not answer: " + e.getMessage(), e);
        } finally {
            broker.close();
        }
    }

    /** Ends the demo; may be called from any thread. */
    @Override
    public void close() {
        ended.countDown();
    }

    private void draw(Screen screen, double seconds) {
        long end = seconds < Long.MAX_VALUE / 1e9 ? CLOCK.getAsLong() + (long) (seconds * 1e9) : Long.MAX_VALUE;
        out.print(screen.begin());
        try {
            while (end - CLOCK.getAsLong() > 0) {
                long pause = Math.min(screen.pauseNanos(), end - CLOCK.getAsLong());
                if (ended.await(pause, TimeUnit.NANOSECONDS)) {
                    break;
                }
                out.print(screen.next());
                out.flush();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            out.print(screen.end());
        }
    }

    /** The demo's own configuration, for a broker. */
    static Config config(String url) {
        try (InputStream file = Demo.class.getResourceAsStream("demo.toml")) {
            String text = new String(file.readAllBytes(), StandardCharsets.UTF_8);
            return ConfigFile.read(text.replace(USUAL_BROKER, url), "demo.toml");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (ConfigException e) {
            throw new IllegalStateException("the demo's own configuration is wrong: " + e.getMessage(), e);
        }
    }

    private static String summary(Daemon daemon, CheckingDisplay display) {
        LinkStatus link = daemon.link();
        FrameReport last = daemon.frames().snapshot();
        Lateness lateness = daemon.frames().lateness();
        String states = display.states().stream().map(PrinterState::word).collect(Collectors.joining(" "));
        return String.format(
                Locale.ROOT,
                "demo: shown %s; %d frames made, %d sent, %d acknowledged, %d dimmed by the controller, %d over the ceiling;"
                        + " most current %d mA; lateness p50 %.3f ms, p99 %.3f ms, p99.9 %.3f ms, %d ticks left out",
                states,
                last.frames(),
                link.framesSent(),
                link.framesShown(),
                display.dimmed(),
                display.overCeiling(),
                last.mostMilliamps(),
                lateness.microsAt(0.5) / 1000,
                lateness.microsAt(0.99) / 1000,
                lateness.microsAt(0.999) / 1000,
                last.skipped());
    }
}
